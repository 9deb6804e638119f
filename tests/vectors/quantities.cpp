#include "quantities.hpp"

#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/model/growth.hpp>

namespace chk {

// a blank ends a word in the file, so an underscore stands for it: id=5/8_toe
givens::givens(const check_case& c) {
    for (const entry& e : c.given) {
        std::string& text = all_[e.key] = e.text;
        std::replace(text.begin(), text.end(), '_', ' ');
    }
}

const std::string& givens::word(const std::string& key) {
    const auto at = all_.find(key);
    if (at == all_.end()) {
        throw bad_case("'" + key + "' must be given");
    }
    read_.insert(key);
    return at->second;
}

double givens::number(const std::string& key, const std::string& unit) {
    const measure m = parse_measure(word(key));
    if (m.unit != unit) {
        throw bad_case("'" + key + "' is given as " + show(m.v, m.unit) + "; its unit is " +
                       (unit.empty() ? "none" : unit));
    }
    return m.v;
}

int givens::whole(const std::string& key) {
    const double v = number(key);
    if (v != std::floor(v) || std::abs(v) > 1e6) {
        throw bad_case("'" + key + "' must be a whole number");
    }
    return static_cast<int>(v);
}

pelage::length givens::length(const std::string& key) {
    return pelage::mm(number(key, "mm"));
}
pelage::days givens::days(const std::string& key) {
    return pelage::day(number(key, "d"));
}
pelage::growth_rate givens::rate(const std::string& key) {
    return pelage::mm_per_day(number(key, "mm/d"));
}

std::vector<std::string> givens::list(const std::string& key) {
    std::vector<std::string> out;
    std::istringstream in{word(key)};
    for (std::string one; std::getline(in, one, ',');) {
        out.push_back(one);
    }
    return out;
}

pelage::coat_class givens::coat(const std::string& key) {
    const std::string& text = word(key);
    const auto at = std::find(pelage::coat_names.begin(), pelage::coat_names.end(), text);
    if (at == pelage::coat_names.end()) {
        throw bad_case("no coat is called '" + text + "'");
    }
    return static_cast<pelage::coat_class>(at - pelage::coat_names.begin());
}

pelage::brushing givens::brushing(const std::string& key) {
    std::string text = word(key);
    std::replace(text.begin(), text.end(), '-', ' ');
    const auto b = pelage::parse_brushing(text);
    if (!b) {
        throw bad_case("no brushing is written '" + text + "'");
    }
    return *b;
}

std::vector<std::string> givens::unread() const {
    std::vector<std::string> out;
    for (const auto& [key, text] : all_) {
        if (read_.count(key) == 0) {
            out.push_back(key);
        }
    }
    return out;
}

answer in(const pelage::length& l) {
    return measure{pelage::in_mm(l), "mm"};
}
answer in(const pelage::days& d) {
    return pelage::is_never(d) ? answer{std::string("never")} : measure{pelage::in_days(d), "d"};
}
answer in(const pelage::work& w) {
    return measure{pelage::in_minutes(w), "min"};
}
answer plain(double v) {
    return measure{v, {}};
}

const std::map<std::string, quantity>& quantities() {
    static const std::map<std::string, quantity> all = [] {
        std::map<std::string, quantity> q;
        add_tools(q);
        add_growth(q);
        add_matting(q);
        add_sheets(q);
        add_inheritance(q);
        return q;
    }();
    return all;
}

}  // namespace chk
