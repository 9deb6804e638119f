// Lengths, days, growth rates and minutes of work. The only header that sees Boost.Units.
//
// Our own base units (mm, day) make one system, so that rate * days is a length with no scale factor
// hidden in it. Minutes of work are integers of a thousandth of a minute in a system of their own:
// costs must compare exactly, and nobody should be able to add a day to them.
#pragma once

#include <cmath>
#include <cstdint>

#include <boost/units/base_unit.hpp>
#include <boost/units/derived_dimension.hpp>
#include <boost/units/limits.hpp>  // without it numeric_limits<length>::infinity() is silently 0 mm
#include <boost/units/make_system.hpp>
#include <boost/units/physical_dimensions/length.hpp>
#include <boost/units/physical_dimensions/time.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/unit.hpp>

namespace pelage {

namespace detail {
struct mm_base : boost::units::base_unit<mm_base, boost::units::length_dimension, 7001> {
    static const char* name() { return "millimetre"; }
    static const char* symbol() { return "mm"; }
};
struct day_base : boost::units::base_unit<day_base, boost::units::time_dimension, 7002> {
    static const char* name() { return "day"; }
    static const char* symbol() { return "d"; }
};
struct work_base : boost::units::base_unit<work_base, boost::units::time_dimension, 7003> {
    static const char* name() { return "thousandth of a minute"; }
    static const char* symbol() { return "mmin"; }
};
using coat_system = boost::units::make_system<mm_base, day_base>::type;
using work_system = boost::units::make_system<work_base>::type;
using rate_dimension = boost::units::derived_dimension<boost::units::length_base_dimension, 1,
                                                       boost::units::time_base_dimension, -1>::type;
}  // namespace detail

/// A length of hair or of a tool (mm, double).
using length =
    boost::units::quantity<boost::units::unit<boost::units::length_dimension, detail::coat_system>,
                           double>;
/// A span of time in the life of a coat (days, double).
using days =
    boost::units::quantity<boost::units::unit<boost::units::time_dimension, detail::coat_system>,
                           double>;
/// How fast hair grows (mm per day, double).
using growth_rate =
    boost::units::quantity<boost::units::unit<detail::rate_dimension, detail::coat_system>, double>;
/// Time at the table (thousandths of a minute, 64-bit integer: sums and comparisons are exact).
using work =
    boost::units::quantity<boost::units::unit<boost::units::time_dimension, detail::work_system>,
                           std::int64_t>;

/// `v` millimetres. Any double is taken; files and options refuse what is not finite.
[[nodiscard]] constexpr length mm(double v) {
    return length::from_value(v);
}
/// `v` days.
[[nodiscard]] constexpr days day(double v) {
    return days::from_value(v);
}
/// `v` millimetres per day.
[[nodiscard]] constexpr growth_rate mm_per_day(double v) {
    return growth_rate::from_value(v);
}
/// `thousandths` of a minute of work, exactly.
[[nodiscard]] constexpr work mmin(std::int64_t thousandths) {
    return work::from_value(thousandths);
}
/// `v` rounded to the nearest whole number, halves away from zero, as std::llround does; |v| below 1e15. In
/// line: lengths are rounded so often that the call alone was a tenth of a roster's time.
[[nodiscard]] constexpr std::int64_t nearest_whole(double v) {
    const auto whole = static_cast<std::int64_t>(v);
    const double rest = v - static_cast<double>(whole);  // exact
    return whole + static_cast<std::int64_t>(rest >= 0.5) - static_cast<std::int64_t>(rest <= -0.5);
}
/// `v` minutes of work, rounded to the nearest thousandth; `v` finite and below 1e12.
[[nodiscard]] constexpr work minutes(double v) {
    return mmin(nearest_whole(v * 1000.0));
}
/// `n`/`d` inch, correctly rounded: an inch is 127/5 mm exactly (international inch, 1959;
/// NIST SP 811). `d` is not 0.
[[nodiscard]] constexpr length inch(int n, int d = 1) {
    return mm(127.0 * n / (5.0 * d));
}

/// The value in millimetres.
[[nodiscard]] constexpr double in_mm(const length& l) {
    return l.value();
}
/// The value in days.
[[nodiscard]] constexpr double in_days(const days& d) {
    return d.value();
}
/// The value in millimetres per day.
[[nodiscard]] constexpr double in_mm_per_day(const growth_rate& r) {
    return r.value();
}
/// The value in thousandths of a minute.
[[nodiscard]] constexpr std::int64_t in_mmin(const work& w) {
    return w.value();
}
/// The value in minutes, for people.
[[nodiscard]] constexpr double in_minutes(const work& w) {
    return static_cast<double>(w.value()) / 1000.0;
}

/// The shorter of two lengths.
[[nodiscard]] constexpr length shorter(const length& a, const length& b) {
    return b < a ? b : a;
}
/// The longer of two lengths.
[[nodiscard]] constexpr length longer(const length& a, const length& b) {
    return a < b ? b : a;
}
/// |a - b| (mm).
[[nodiscard]] constexpr length gap(const length& a, const length& b) {
    return a < b ? b - a : a - b;
}
/// `l` rounded to whole hundredths of a millimetre, the grain in which plans are compared.
[[nodiscard]] constexpr std::int32_t in_hundredths(const length& l) {
    return static_cast<std::int32_t>(nearest_whole(l.value() * 100.0));
}

/// `l` at the grain in which plans are compared, 0.01 mm.
[[nodiscard]] constexpr length rounded(const length& l) {
    return mm(in_hundredths(l) / 100.0);
}
/// Whether `l` lies within `tol` of `target`, compared at 0.01 mm.
[[nodiscard]] constexpr bool within(const length& l, const length& target, const length& tol) {
    return in_hundredths(gap(l, target)) <= in_hundredths(tol);
}

inline namespace literals {
constexpr length operator""_mm(long double v) {
    return mm(static_cast<double>(v));
}
constexpr length operator""_mm(unsigned long long v) {
    return mm(static_cast<double>(v));
}
constexpr days operator""_d(unsigned long long v) {
    return day(static_cast<double>(v));
}
}  // namespace literals

}  // namespace pelage
