// What the unit layer promises, checked while compiling. Constructors can't be asked this way
// (constructible_from says yes and then fails); tests/compile_fail/units.cpp tries those.
#include <concepts>
#include <cstdint>
#include <limits>
#include <type_traits>

#include <pelage/base/units.hpp>

using namespace pelage;

namespace {

template <class A, class B>
concept can_add = requires(A a, B b) {
    a + b;
};
template <class A, class B>
concept can_compare = requires(A a, B b) {
    a < b;
};
template <class A, class B>
concept can_divide = requires(A a, B b) {
    a / b;
};

// The four kinds are four types, and each adds to and compares with itself alone.
static_assert(can_add<length, length> && can_add<days, days>);
static_assert(can_add<growth_rate, growth_rate> && can_add<work, work>);
static_assert(!can_add<length, days> && !can_add<length, growth_rate>);
static_assert(!can_add<days, work> && !can_add<length, work>);
static_assert(can_compare<length, length> && can_compare<work, work>);
static_assert(!can_compare<length, days> && !can_compare<days, work>);

// A bare number is no quantity, and a quantity no bare number.
static_assert(!can_add<length, double> && !can_add<double, days> && !can_add<work, int>);
static_assert(!can_compare<length, double> && !can_compare<growth_rate, double>);
static_assert(!std::convertible_to<double, length> && !std::convertible_to<int, length>);
static_assert(!std::convertible_to<length, double> && !std::convertible_to<days, double>);
static_assert(!std::convertible_to<std::int64_t, work> && !std::convertible_to<work, std::int64_t>);
static_assert(!std::convertible_to<length, days> && !std::convertible_to<growth_rate, length>);
static_assert(!std::convertible_to<days, work> && !std::convertible_to<work, days>);

// Growth times time is a length, whichever stands first; a length through a rate is a time.
static_assert(std::same_as<decltype(growth_rate{} * days{}), length>);
static_assert(std::same_as<decltype(days{} * growth_rate{}), length>);
static_assert(std::same_as<decltype(length{} / days{}), growth_rate>);
static_assert(std::same_as<decltype(length{} / growth_rate{}), days>);
static_assert(in_mm(mm(4.0) + mm_per_day(0.25) * day(8.0)) == 6.0);
static_assert(in_days(mm(9.0) / mm_per_day(0.25)) == 36.0);

// A ratio of two lengths is a plain number.
static_assert(can_divide<length, length>);
static_assert(std::convertible_to<decltype(length{} / length{}), double>);
static_assert(mm(12.0) / mm(3.0) == 4.0);

// Lengths are doubles even when made from whole numbers: half of 3 mm is 1.5 mm, not 1.
static_assert(std::same_as<length::value_type, double> && std::same_as<days::value_type, double>);
static_assert(std::same_as<work::value_type, std::int64_t>);
static_assert(in_mm(3_mm / 2.0) == 1.5);
static_assert(std::same_as<decltype(3_mm), length> && std::same_as<decltype(3.0_mm), length>);
static_assert(std::same_as<decltype(3_d), days>);

// An inch is 25.4 mm exactly, so these fractions are the decimals nearest to the true value.
static_assert(in_mm(inch(1)) == 25.4);
static_assert(in_mm(inch(3, 8)) == 9.525);
static_assert(in_mm(inch(1, 32)) == 0.79375);
static_assert(in_mm(inch(5, 8)) == 15.875);
static_assert(in_mm(inch(1, 64)) == 0.396875);

// Infinity is infinite: without Boost's limits header it would be 0 mm.
static_assert(std::numeric_limits<length>::is_specialized);
static_assert(mm(1e300) < std::numeric_limits<length>::infinity());
static_assert(mm(1e300) < std::numeric_limits<length>::max());
static_assert(mmin(1'000'000'000'000) < std::numeric_limits<work>::max());

// Shorter, longer and gap.
static_assert(shorter(3_mm, 4_mm) == 3_mm && shorter(4_mm, 3_mm) == 3_mm);
static_assert(longer(3_mm, 4_mm) == 4_mm && longer(4_mm, 3_mm) == 4_mm);
static_assert(gap(3_mm, 5_mm) == 2_mm && gap(5_mm, 3_mm) == 2_mm && gap(5_mm, 5_mm) == 0_mm);

// Work is whole thousandths of a minute, so equal costs are equal.
static_assert(mmin(100) + mmin(200) == mmin(300));
static_assert(in_minutes(mmin(2500)) == 2.5);

// A quantity is no larger than its number.
static_assert(sizeof(length) == sizeof(double) && sizeof(work) == sizeof(std::int64_t));

}  // namespace
