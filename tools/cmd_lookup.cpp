#include <pelage/io/write_kit.hpp>
#include <pelage/phrase.hpp>

#include "commands.hpp"
#include "judge.hpp"

namespace pelage::cli {

namespace {

reply sources(const request& q, const workplace& w) {
    const std::string key = q.operands.empty() ? "" : q.operands.front();
    const std::string text =
        w.json ? io::sources_json(w.reference, key) : io::sources_text(w.reference, key, w.print);
    if (!text.empty()) {
        return {text};
    }
    faults f;
    f.say(errc::unknown, "no figure or source has \"" + key +
                             "\" in its name; write lookup --sources "
                             "for all of them");
    f.throw_if_any();
    return {};
}

void judge_words(const request& q, const workplace& w, lookup_request& r, faults& f) {
    if (!q.coat.empty()) {
        r.coat = coat_called(q.coat, f);
    }
    if (!q.zone.empty()) {
        if (const auto there = places_called("--zone", q.zone, w.reference.dog_body, f)) {
            r.where = there->places;
        }
    }
    if (!q.direction.empty()) {
        r.way = direction_called(q.direction, f);
    }
    if (q.kind == "blade" || q.kind == "comb") {
        r.kind = q.kind == "blade" ? asked_kind::blade : asked_kind::comb;
    } else if (!q.kind.empty()) {
        f.say(errc::unknown, "--kind: found \"" + q.kind + "\"; write blade or comb");
    }
}

curl_mode curl_called(const std::string& text, faults& f) {
    if (!text.empty() && text != "additive" && text != "dominant") {
        f.say(errc::unknown, "--curl: found \"" + text + "\"; write additive or dominant");
    }
    return text == "dominant" ? curl_mode::dominant : curl_mode::additive;
}

/// A breed or a mix: what it was asked with that only goes with tools is told.
reply a_mix(const request& q, const workplace& w, const std::string& text, faults& f) {
    const std::vector<std::pair<const char*, bool>> tools_only{
        {"--coat", !q.coat.empty()},
        {"--zone", !q.zone.empty()},
        {"--direction", !q.direction.empty()},
        {"--barber", q.barber}};
    for (const auto& [option, given] : tools_only) {
        if (given) {
            f.say(errc::conflict, std::string(option) +
                                      ": goes with a blade, a comb or a length; " +
                                      "found the mix \"" + text + "\"; leave it out");
        }
    }
    const curl_mode curl = curl_called(q.curl, f);
    f.throw_if_any();
    const expected_coat e = expect_coat(text, w.reference.genes, w.reference.coats, curl);
    return {w.json ? io::json_of(e, w.reference) : io::text_of(e, w.reference, w.print)};
}

/// Everything the kit leaves on a coat.
reply ladder_of(const request& q, const workplace& w, lookup_request& r, faults& f) {
    if (q.coat.empty()) {
        f.say(errc::missing,
              "--all: the ladder is of one coat; write it, as in lookup --all --coat curly");
    }
    if (!q.operands.empty()) {
        f.say(errc::conflict,
              "--all: everything is listed; found \"" + r.text + "\" too; leave one of them out");
    }
    f.throw_if_any();
    const ladder l = whole_ladder(r);
    return {w.json ? io::json_of(l, r) : w.csv ? io::csv_of(l, r) : io::text_of(l, r, w.print)};
}

}  // namespace

reply lookup(const request& q, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(q, around, f);
    if (q.sources) {
        f.throw_if_any();
        return sources(q, w);
    }
    // "lookup 13 mm comb over 10" without quotes
    const std::string text = joined(q.operands, " ");
    if (!q.all && q.kind.empty() && sounds_like_mix(text, w.reference.genes)) {
        return a_mix(q, w, text, f);
    }
    lookup_request r{
        w.reference, w.place().rules, w.tools(), text, asked_kind::any, q.barber, {}, {},
        {},          w.print.today};
    judge_words(q, w, r, f);
    if (!q.curl.empty()) {
        f.say(errc::conflict, "--curl: goes with a breed or a mix; leave it out");
    }
    if (q.all) {
        return ladder_of(q, w, r, f);
    }
    f.throw_if_any();
    const lookup_answer a = look_up(r);
    return {w.json ? io::json_of(a, r) : io::text_of(a, r, w.print), a.never ? answer_is_no : done};
}

}  // namespace pelage::cli
