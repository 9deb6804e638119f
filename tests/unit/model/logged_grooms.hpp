// Grooms as a record has them, for the tests of what a record comes to.
#pragma once

#include <pelage/base/date.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/log_entry.hpp>

namespace logged {

using namespace pelage;

inline date on(const char* day) {
    return *parse_date(day);
}

inline log_entry groomed(unsigned number, const char* day, double left = 13) {
    log_entry e;
    e.number = number;
    e.on = on(day);
    e.services = {service_kind::full};
    e.left = {{"all", mm(left), true}};
    e.mats.emplace();
    return e;
}

inline dog curly() {
    dog d;
    d.id = "rosie";
    d.coat = coat_class::curly;
    return d;
}

}  // namespace logged
