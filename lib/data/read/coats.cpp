// The coats and the files of figures of the reference.
#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "data/read/figures.hpp"
#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

rate_prior get_rate(record& coat_record, page& p, const std::string& prefix) {
    const member* m = coat_record.get("rate", presence::must,
                                      "{ median = \"0.34 mm/day\", log_sd = 0.3, basis = "
                                      "\"assumption\" }");
    if (m == nullptr) {
        return {};
    }
    if (m->value.kind != node_kind::table) {
        p.out.add(m->value.at, errc::type,
                  fmt::format("\"rate\" must be a table; found {}; write rate = {{ median = \"0.34 "
                              "mm/day\", log_sd = 0.3, basis = \"assumption\" }}",
                              found(m->value)));
        return {};
    }
    record r(m->value, p.out);
    const auto median = r.get_number("median", presence::must, measure::rate, over_zero(2.0));
    const auto log_sd = r.get_number("log_sd", presence::must, measure::number, over_zero(1.0));
    rate_prior prior{mm_per_day(median.value_or(0.0)), log_sd.value_or(0.0),
                     get_evidence(r, p, presence::must)};
    r.done();
    list_text(p, prefix + "/rate", with_unit(median.value_or(0.0), measure::rate), prior.why);
    list_text(p, prefix + "/log_sd", with_unit(prior.log_sd, measure::number), prior.why);
    return prior;
}

/// Where the hair keeps growing, and how it does there: three keys together or none.
void get_feathering(record& r, page& p, const std::string& prefix, coat& c) {
    figures f(r, p, prefix);
    const auto terminal = f.may<length>("feathering_terminal", over_zero(longest_mm));
    const auto prone = f.may<length>("feathering_matting_prone", over_zero(longest_mm));
    const member* m = r.get("feathering");
    if (m == nullptr && !terminal && !prone) {
        return;
    }
    if (m == nullptr || m->value.kind != node_kind::table || !terminal || !prone) {
        p.out.add(
            r.at("feathering"), errc::missing,
            "feathering goes with its lengths; write feathering = { zones = [\"legs\"], basis = "
            "\"practice\" }, feathering_terminal and feathering_matting_prone, or none of them");
        return;
    }
    record where(m->value, p.out);
    feathering out{{}, *terminal, *prone};
    for (const word& w : where.get_words("zones", presence::must)) {
        if (const selection* s = p.places.find(w, p.out)) {
            for (const place& at : s->places) {
                out.zones.push_back(p.places.whole().zones[at.zone].id);
            }
        }
    }
    const evidence why = get_evidence(where, p, presence::must);
    where.done();
    list_text(p, prefix + "/feathering", fmt::format("{}", fmt::join(out.zones, ", ")), why);
    c.feathers = std::move(out);
}

void get_figures(record& r, page& p, const std::string& prefix, coat& c) {
    figures f(r, p, prefix);
    c.lay_degrees = f.must<double>("lay", over_zero(90.0), measure::degrees);
    c.rate = get_rate(r, p, prefix);
    c.growing_share = f.must<double>("growing_share", from_zero(1.0));
    c.reentry = f.may<days>("reentry", over_zero(3650.0));
    c.terminal = f.must<length>("terminal", over_zero(longest_mm));
    get_feathering(r, p, prefix, c);
    c.matting_prone = f.may<length>("matting_prone", over_zero(longest_mm));
    c.shortest = f.must<length>("shortest", over_zero(longest_mm));
    c.usual_interval = f.must<days>("usual_interval", over_zero(365.0));
}

coat get_coat(record& r, page& p, std::size_t place) {
    coat c;
    const auto id = r.get_name<coat_class>("id", presence::must, coat_names);
    c.id = id.value_or(static_cast<coat_class>(std::min(place, coat_names.size() - 1)));
    if (id && static_cast<std::size_t>(*id) != place) {
        p.out.add(
            r.at("id"), errc::conflict,
            fmt::format("the coats stand in one order, each once; found {} in place {}; right "
                        "is {}",
                        shown(name(*id)), place + 1,
                        place < coat_names.size() ? coat_names[place] : "no more coats"));
    }
    c.title = r.get_text("title", presence::must);
    c.look = r.get_text("look", presence::must);
    c.kind = r.get_name<cycle>("cycle", presence::must, cycle_names).value_or(cycle::growing);
    const std::string prefix = "coats/" + std::string(name(c.id));
    get_figures(r, p, prefix, c);
    c.jacket = r.get_name<jacket_finish>("jacket", presence::must, jacket_names).value_or(c.jacket);
    c.jacket_why = get_basis(r, p, "jacket_basis");
    list_text(p, prefix + "/jacket", std::string(name(c.jacket)), c.jacket_why);
    c.said_first = r.get_text("said_first", presence::may);
    c.carded_with = r.get_text("carded_with", presence::must);
    c.carded_why = get_basis(r, p, "carded_basis");
    list_text(p, prefix + "/carded_with", c.carded_with, c.carded_why);
    r.done();
    if ((c.kind == cycle::resting) != c.reentry.has_value()) {
        p.out.add(r.at("reentry"), errc::conflict,
                  fmt::format("a resting coat, and no other, has a wait; found cycle {}; write "
                              "reentry = {{ ... }} there only",
                              shown(name(c.kind))));
    }
    return c;
}

/// One figure of a set; its id, empty if there is no such figure.
std::string get_rule(record& r, page& p, const rule_set& set,
                     const std::vector<std::string_view>& all) {
    std::string id = r.get_text("id", presence::must);
    const int i = id.empty() ? -1 : index_of({id, r.at("id")}, "figure", all, p.out);
    if (i < 0) {
        return {};
    }
    const figure_field& slot = set.slots[static_cast<std::size_t>(i)];
    auto f = get_spread(r, slot.kind(), slot.range);
    const evidence why = get_evidence(r, p, presence::must);
    r.done();
    if (f) {
        f->why = why;
        slot.store(*f);
        list_figure(p, std::string(set.name) + "/" + id, *f, slot.kind());
    }
    return id;
}

/// Every figure of a set, each once; gives where they stand.
spot get_all_figures(const node& root, page& p, const rule_set& mine) {
    record top(root, p.out);
    check_format(top);
    std::vector<std::string_view> all;
    for (const figure_field& s : mine.slots) {
        all.push_back(s.id);
    }
    std::vector<std::string_view> missing = all;
    unique_ids seen;
    for (const node* n : top.get_tables("figure", presence::must)) {
        record r(*n, p.out);
        const std::string id = get_rule(r, p, mine, all);
        seen.add(id, r.at("id"), "figure", p.out);
        std::erase(missing, id);
    }
    top.done();
    for (const std::string_view id : missing) {
        p.out.add(top.at("figure"), errc::missing,
                  fmt::format("a figure is missing; found no \"{0}\"; write [[figure]] with id = "
                              "\"{0}\"",
                              id));
    }
    return top.at("figure");
}

}  // namespace

void get_coats(const node& root, page& p, reference_data& c) {
    record top(root, p.out);
    check_format(top);
    for (const node* n : top.get_tables("coat", presence::must)) {
        record r(*n, p.out);
        c.coats.push_back(get_coat(r, p, c.coats.size()));
    }
    top.done();
    if (c.coats.size() < coat_names.size()) {
        p.out.add(
            top.at("coat"), errc::missing,
            fmt::format("coats are missing; found {}; right are all {} from {} to {}",
                        c.coats.size(), coat_names.size(), coat_names.front(), coat_names.back()));
    }
}

void get_rule_file(const node& root, page& p, reference_data& c, std::string_view set) {
    const auto sets = rule_sets(c.rules);
    const auto mine =
        std::find_if(sets.begin(), sets.end(), [&](const rule_set& s) { return s.name == set; });
    const spot at = get_all_figures(root, p, *mine);
    if (p.out.none()) {
        check_rules(c.rules, set, at, p.out);
    }
}

void get_quiz(const node& root, page& p, quiz_rules& to) {
    (void)get_all_figures(root, p, quiz_slots(to));
}

}  // namespace pelage::io
