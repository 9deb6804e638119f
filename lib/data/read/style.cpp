// Style sheets: each laid over its parent, if it has one.
#include <algorithm>

#include <fmt/format.h>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

#include "data/read/style_parts.hpp"

namespace pelage::io {

namespace {

constexpr std::array<std::string_view, 3> feet_words{"round", "clean", "natural"};
constexpr std::array<std::string_view, 4> face_words{"clean", "round", "bearded", "natural"};

/// What a sheet takes over from its parent: all but who it is, who approved it, and when; minutes only where
/// it changes no length.
style inherits_from(const style& parent) {
    style s = parent;
    s.id.clear();
    s.title.clear();
    s.version = 1;
    s.dated.reset();
    s.approved_by.clear();
    s.extends = parent.id;
    s.line.insert(s.line.begin(), parent.id);
    s.why = {basis::assumption,
             {},
             false,
             fmt::format("from the sheet {}; what differs is the salon's own", parent.id)};
    for (sheet_rule& r : s.rules) {
        r.from = r.from.empty() ? parent.id : r.from;
    }
    for (limit& l : s.limits) {
        l.from = l.from.empty() ? parent.id : l.from;
    }
    for (season& one : s.seasons) {
        for (sheet_rule& r : one.rules) {
            r.from = r.from.empty() ? parent.id : r.from;
        }
    }
    return s;
}

/// Reads one sheet over what it has from its parent: a key that isn't there changes nothing.
class style_reader {
  public:
    style_reader(record& r, page& p, const style* parent)
        : record_(r), page_(p), sheet_(parent == nullptr ? style{} : inherits_from(*parent)) {}

    style read(bool has_parent) {
        head(has_parent);
        trim();
        upkeep();
        minutes_by_size();
        scale(has_parent);
        const std::vector<placed_rule> rules =
            get_rules(record_, page_, "zones", has_parent ? presence::may : presence::must);
        for (const placed_rule& one : rules) {
            sheet_.rules.push_back(one.rule);
        }
        seams();
        limits(has_parent);
        other_lengths_other_minutes(has_parent);
        sheet_.seasons = get_seasons(record_, page_, std::move(sheet_.seasons));
        adjustable();
        no_length_vanishes();
        return std::move(sheet_);
    }

  private:
    [[nodiscard]] bool there(std::string_view key) { return record_.get(key) != nullptr; }
    void text(std::string_view key, std::string& to, text_kind k = text_kind::line) {
        if (there(key)) {
            to = record_.get_text(key, presence::may, k);
        }
    }
    void flag(std::string_view key, bool& to) {
        if (there(key)) {
            to = record_.get_flag(key);
        }
    }
    void words(std::string_view key, std::vector<std::string>& to) {
        if (there(key)) {
            to.clear();
            for (const word& w : record_.get_words(key, presence::may)) {
                to.push_back(w.text);
            }
        }
    }
    [[nodiscard]] written_at at(const spot& s) const {
        return {page_.out.file(), s.line, s.column};
    }

    void head(bool has_parent) {
        sheet_.id = record_.get_id("id");
        sheet_.at = at(record_.at("id"));
        sheet_.title = record_.get_text("title", presence::must);
        sheet_.version = record_.get_count("version", 1, 9999, 1);
        sheet_.dated = record_.get_day("date", presence::may);
        sheet_.approved_by = record_.get_text("approved_by", presence::may);
        text("text", sheet_.text, text_kind::prose);
        if (there("coats")) {
            sheet_.coats.clear();
            for (const word& w : record_.get_words("coats", presence::may)) {
                const int i = index_of(w, "coat", coat_names, record_.out());
                if (i >= 0) {
                    sheet_.coats.push_back(static_cast<coat_class>(i));
                }
            }
        }
        if (there("mixes")) {
            sheet_.mixes.clear();
            sheet_.mixes_at.clear();
            for (const word& w : record_.get_words("mixes", presence::may)) {
                sheet_.mixes.push_back(w.text);
                sheet_.mixes_at.push_back(at(w.at));
            }
        }
        const bool must = page_.ours;
        if (must || there("basis") || there("source") || there("note") || !has_parent) {
            sheet_.why =
                get_evidence(record_, page_, must ? presence::must : presence::may, sheet_.why);
        } else {
            record_.get("relayed");
        }
    }

    void trim() {
        if (there("feet")) {
            sheet_.feet = record_.get_choice("feet", presence::may, feet_words);
        }
        if (there("face")) {
            sheet_.face = record_.get_choice("face", presence::may, face_words);
        }
        text("ears", sheet_.ears);
        text("tail", sheet_.tail);
        text("topknot", sheet_.topknot);
        flag("show", sheet_.show);
        flag("clip_jacket", sheet_.clip_jacket);
    }

    void upkeep() {
        if (there("upkeep")) {
            sheet_.upkeep = get_upkeep_words(record_, "upkeep");
        }
        if (const auto d = record_.get_number("longest_interval", presence::may, measure::days,
                                              {1.0, 365.0, true})) {
            sheet_.longest_interval = day(*d);
        }
        if (there("consent")) {
            sheet_.consent.clear();
            for (const word& w : record_.get_words("consent", presence::may)) {
                (void)index_of(w, "consent", consent_names, page_.out);
                sheet_.consent.push_back(w.text);
            }
        }
        text("front_desk", sheet_.front_desk);
    }

    void minutes_by_size() {
        const node* table = record_.get_table("minutes", presence::may);
        if (table == nullptr) {
            return;
        }
        record r(*table, page_.out, "minutes.");
        sheet_minutes own;
        bool any = false;
        for (std::size_t k = 0; k < size_names.size(); ++k) {
            if (const auto m = r.get_number(size_names[k], presence::may, measure::minutes,
                                            {1.0, 600.0, true})) {
                own.by_size[k] = minutes(*m);
                any = true;
            }
        }
        const std::string how = r.get_choice("basis", presence::may, own_basis);
        own.why = {how == "measured" ? basis::measured : basis::assumption,
                   {},
                   false,
                   r.get_text("note", presence::may, text_kind::prose)};
        r.done();
        if (!any && table->members.empty()) {
            page_.out.add(table->at, errc::missing,
                          "\"minutes\" is empty; found no size; write medium = \"75 min\"");
        }
        sheet_.takes = own;
    }

    /// What a clock said of the parent's lengths says nothing of others.
    void other_lengths_other_minutes(bool has_parent) {
        if (has_parent && !there("minutes") && (there("scale") || there("zones"))) {
            sheet_.takes = {};
        }
    }

    void scale(bool has_parent) {
        const auto share = get_scale(record_, "scale");
        if (!share) {
            return;
        }
        if (!has_parent) {
            page_.out.add(record_.at("scale"), errc::conflict,
                          "a scale makes a parent's lengths longer or shorter; found no parent; "
                          "write extends = \"...\" above it, or the lengths themselves");
            return;
        }
        scale_lengths(sheet_, *share);
        for (season& s : sheet_.seasons) {
            for (sheet_rule& r : s.rules) {
                r.what.target =
                    r.what.target ? std::optional{rounded(*r.what.target * *share)} : std::nullopt;
            }
        }
    }

    /// Shares of shares, and of short lengths, may leave nothing.
    void no_length_vanishes() {
        const auto too_short = [](const style& s) {
            return std::any_of(s.rules.begin(), s.rules.end(), [](const sheet_rule& r) {
                return r.what.target && in_mm(*r.what.target) < shortest_hair_mm;
            });
        };
        const char* const why =
            "a share leaves a length of under 0.1 mm, which nothing can cut; write the lengths "
            "themselves";
        if (too_short(sheet_)) {
            page_.out.add(record_.at("scale"), errc::range, why);
            return;
        }
        for (const season& one : sheet_.seasons) {
            if (too_short(in_season(sheet_, one))) {
                page_.out.add(record_.at("season"), errc::range, why);
            }
        }
    }

    void seams() {
        for (const node* n : record_.get_tables("seam", presence::may)) {
            record r(*n, page_.out);
            sheet_seam s;
            s.a = end_of_seam(r, "a");
            s.b = end_of_seam(r, "b");
            const auto kind = r.get_name<seam_kind>("kind", presence::must, seam_names);
            s.why = r.get_text("why", presence::may, text_kind::prose);
            r.done();
            if (s.a.empty() || s.b.empty() || !kind) {
                continue;
            }
            s.kind = *kind;
            if (!touch(s)) {
                page_.out.add(r.at(), errc::conflict,
                              fmt::format("these don't touch; found {} and {}; write two "
                                          "neighbours: {} touches {}",
                                          shown(s.a), shown(s.b), s.a, beside(s.a)));
                continue;
            }
            sheet_.seams.push_back(std::move(s));
        }
    }
    std::string end_of_seam(record& r, std::string_view key) {
        const std::string text = r.get_text(key, presence::must);
        return !text.empty() && page_.places.find({text, r.at(key)}, page_.out) != nullptr
                   ? text
                   : std::string{};
    }
    /// The zones beside what is called so.
    [[nodiscard]] std::string beside(const std::string& text) {
        const selection* here = page_.places.find({text, {}}, page_.out);
        const body& b = page_.places.whole();
        std::vector<std::string> all;
        for (const seam& one : b.seams) {
            const auto in = [&](std::size_t zone) {
                return std::any_of(here->places.begin(), here->places.end(),
                                   [&](const place& p) { return p.zone == zone; });
            };
            if (in(one.a) != in(one.b)) {
                const std::string& id = b.zones[in(one.a) ? one.b : one.a].id;
                if (std::find(all.begin(), all.end(), id) == all.end()) {
                    all.push_back(id);
                }
            }
        }
        return joined(all, ", ");
    }
    [[nodiscard]] bool touch(const sheet_seam& s) {
        const selection* a = page_.places.find({s.a, {}}, page_.out);
        const selection* b = page_.places.find({s.b, {}}, page_.out);
        const auto holds = [](const selection* x, std::size_t zone) {
            return std::any_of(x->places.begin(), x->places.end(),
                               [&](const place& p) { return p.zone == zone; });
        };
        const std::vector<seam>& all = page_.places.whole().seams;
        return std::any_of(all.begin(), all.end(), [&](const seam& one) {
            return (holds(a, one.a) && holds(b, one.b)) || (holds(a, one.b) && holds(b, one.a));
        });
    }

    void limits(bool has_parent) {
        bool dropped = false;
        flag("drop_limits", dropped);
        if (there("drop_limits") && !has_parent) {
            page_.out.add(record_.at("drop_limits"), errc::conflict,
                          "only a parent's limits can be dropped; found no parent; leave "
                          "drop_limits out");
        }
        if (dropped) {
            sheet_.limits.clear();
        }
        for (limit& l : get_limits(record_, page_)) {
            sheet_.limits.push_back(std::move(l));
        }
    }

    void adjustable() {
        const auto own = record_.get_length("adjustable_length", presence::may);
        sheet_.adjustable = own ? own : sheet_.adjustable;
        const bool used = std::any_of(
            sheet_.rules.begin(), sheet_.rules.end(),
            [&](const sheet_rule& rule) { return rule.what.target == sheet_.adjustable; });
        if (own && !used) {
            page_.out.add(
                record_.at("adjustable_length"), errc::conflict,
                fmt::format("an adjustable length is one that the sheet uses; found {} mm, which "
                            "no zone has; write a zone's length",
                            in_mm(*own)));
        }
        if (!used) {
            sheet_.adjustable.reset();  // the parent's, and no longer in use
        }
    }

    record& record_;
    page& page_;
    style sheet_;
};

/// Each line of the sheet as a figure with its basis: its own, or the sheet's.
void list_figures(page& p, const style& s) {
    const std::string prefix = "styles/" + s.id + "/";
    const evidence plain{s.why.how, s.why.from, s.why.relayed, {}};
    list_text(p, prefix + "lengths", "each below", s.why);  // the note once
    for (const sheet_rule& r : s.rules) {
        const instruction& i = r.what;
        if (!i.target && !i.blade) {
            continue;
        }
        std::string value = i.target ? fmt::format("{} mm", in_mm(*i.target)) : "blade " + *i.blade;
        if (i.tolerance) {
            value += fmt::format(" (give or take {} mm)", in_mm(*i.tolerance));
        }
        list_text(p, prefix + r.whom, value, i.known ? *i.known : plain);
    }
    if (s.longest_interval) {
        list_text(p, prefix + "longest_interval",
                  fmt::format("{} days", in_days(*s.longest_interval)), plain);
    }
    for (const limit& l : s.limits) {
        if (l.low || l.high) {
            list_text(p, prefix + "limit " + l.whom, span_of(l), l.why);
        }
    }
}

}  // namespace

std::string get_upkeep_words(record& r, std::string_view key) {
    const std::string text = r.get_text(key, presence::may);
    if (!text.empty() && !parse_brushing(text)) {
        r.out().add(r.at(key), errc::syntax,
                    fmt::format("not a way to brush; found {}; write it like \"every 3 days to the "
                                "skin\", \"weekly on the surface\" or \"none\"",
                                shown(text)));
    }
    return text;
}

placed<style> get_style(const node& root, page& p, const style* parent, bool parent_unread) {
    record r(root, p.out);
    check_format(r);
    r.get("extends");  // read before: who is read first hangs on it
    style s = style_reader(r, p, parent).read(parent != nullptr || parent_unread);
    r.done();
    if (!parent_unread) {
        check_limits(s, r.at(r.get("scale") != nullptr ? "scale" : "extends"), p);
    }
    if (p.listed != nullptr) {
        list_figures(p, s);
    }
    return {std::move(s), r.at("id")};
}

}  // namespace pelage::io
