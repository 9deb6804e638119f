// Mistakes with units that the compiler must refuse, one a case. CASE 0 is the right program.
#include <iostream>

#include <pelage/base/units.hpp>

using namespace pelage;

#if CASE == 0
length grown(const length& start, const growth_rate& rate, const days& time) {
    return start + rate * time;
}
#elif CASE == 1   // EXPECT: no match for 'operator\+' \(operand types are 'const pelage::length'
auto a_length_and_a_time(const length& l, const days& d) {
    return l + d;
}
#elif CASE == 2   // EXPECT: conversion from 'double' to non-scalar type 'pelage::length'
length bare = 9.5;
#elif CASE == 3   // EXPECT: no match for 'operator>' \(operand types are 'const pelage::length'
bool longer_than_a_bare_number(const length& l) {
    return l > 3.0;
}
#elif CASE == 4   // EXPECT: invalid initialization of reference of type 'const pelage::length&'
double shown(const length& l);
double call = shown(9.5);
#elif CASE == 5   // EXPECT: could not convert .*quantity<
length rate_for_a_length(const growth_rate& r) {
    return r;
}
#elif CASE == 6   // EXPECT: invalid initialization of reference of type 'const pelage::length&'
double days_for_a_length = in_mm(day(3));
#elif CASE == 7   // EXPECT: no match for 'operator\+' \(operand types are 'const pelage::work'
auto minutes_of_work_and_days(const work& w, const days& d) {
    return w + d;
}
#elif CASE == 8   // EXPECT: no match for 'operator\+=' \(operand types are 'pelage::length'
void a_bare_number_added(length& l) {
    l += 1.0;
}
#elif CASE == 9   // EXPECT: cannot convert 'const pelage::length' .* to 'double'
double unit_lost(const length& l) {
    return l;
}
#elif CASE == 10  // EXPECT: no match for 'operator<<' \(operand types are 'std::ostream'
void printed_without_a_unit(const length& l) {
    std::cout << l;
}
#elif CASE == 11  // EXPECT: no match for 'operator==' \(operand types are 'const pelage::length'
bool a_length_equal_to_a_time(const length& l, const days& d) {
    return l == d;
}
#elif CASE == 12  // EXPECT: no match for 'operator==' \(operand types are 'const pelage::length'
bool equal_to_a_bare_number(const length& l) {
    return l == 0.0;
}
#elif CASE == 13  // EXPECT: unable to find numeric literal operator 'operator""_in'
length half_inch = 0.5_in;
#endif
