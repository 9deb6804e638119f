#include <algorithm>
#include <array>
#include <set>
#include <tuple>

#include <pelage/blend.hpp>
#include <pelage/cut.hpp>
#include <pelage/mix.hpp>
#include <pelage/phrase.hpp>
#include <pelage/refusal.hpp>
#include <pelage/sheet_check.hpp>
#include <pelage/text.hpp>

namespace pelage {

namespace {

/// Coats less likely than this aren't judged for (assumption; as where a plan tells of other coats).
constexpr double least_chance = 0.02;

std::string in_quotes(std::string_view s) {
    return '"' + std::string(s) + '"';
}

bool covers(const selection& s, const place& p) {
    return std::any_of(s.places.begin(), s.places.end(), [&](const place& w) {
        return w.zone == p.zone &&
               (w.which == side::both || p.which == side::both || w.which == p.which);
    });
}

/// Whether a finish leaves the coat's own length, whatever the sheet says.
bool keeps_length(const instruction& i) {
    return i.how == finish::leave || i.how == finish::card;
}

std::vector<coat_class> coats_of_mix(const std::string& mix, const catalogue& c) {
    std::vector<coat_class> out;
    const coat_answer a = coats_of(read_mix(mix, c.genes).dog, c.genes, c.coats);
    for (const coat_chance& k : a.coats) {
        if (k.chance >= least_chance) {
            out.push_back(k.coat);
        }
    }
    return out;
}

std::string coat_names_of(const std::vector<coat_class>& coats, const catalogue& c) {
    std::vector<std::string> titles;
    for (const coat_class k : coats) {
        titles.push_back(coat_of(c, k).title);
    }
    return one_of(titles);
}

/// A sheet, plain or in a season, judged.
class sheet_judge {
  public:
    using told = std::set<std::tuple<sheet_doubt, std::size_t, std::size_t, std::size_t>>;

    sheet_judge(const style& own, const style& s, const season* of_it, const catalogue& c,
                const rule_book& rules, std::vector<sheet_warning>& out)
        : own_(own),
          sheet_(s),
          season_(of_it),
          known_(c),
          rules_(rules),
          parts_(c.dog_body),
          laid_(c.dog_body, parts_, s),
          places_(places_of(s, c.dog_body, parts_)),
          coats_(coats_for(s, c)),
          out_(out) {}

    void lengths(told& before) {
        told_ = &before;
        for (const sheet_place& p : places_) {
            beyond(p);
            short_of(p);
            refusals(p);
            loose(p);
        }
        steps();
    }

    /// `seen`: what was told, by rule and limit.
    void limits(const style& standard, std::set<std::pair<std::size_t, std::size_t>>& seen) {
        for (std::size_t n = 0; n < standard.limits.size(); ++n) {
            const limit& l = standard.limits[n];
            const selection* whom = parts_.find(l.whom);
            for (const sheet_place& p : places_) {
                if (whom != nullptr && p.rule && covers(*whom, p.at) && breaks(p, l) &&
                    seen.emplace(*p.rule, n).second) {
                    say(sheet_doubt::limit, p,
                        in_quotes(title(the_body(), p.at)) + when() + " breaks the limit of " +
                            in_quotes(standard.id) + "; found " + length_words(p.asked) + from(p) +
                            "; right is " + span(l) + basis_of(l));
                }
            }
        }
    }

    /// Clauses that compare places of one sheet: "legs no shorter than the body".
    void clauses(const style& standard, std::set<std::pair<std::size_t, std::size_t>>& seen) {
        for (std::size_t n = 0; n < standard.limits.size(); ++n) {
            const limit& l = standard.limits[n];
            const selection* whom = parts_.find(l.whom);
            const selection* than = l.not_below.empty() ? nullptr : parts_.find(l.not_below);
            const sheet_place* longest = nullptr;
            for (const sheet_place& p : places_) {
                if (than != nullptr && p.rule && covers(*than, p.at) && cut(p) &&
                    (longest == nullptr || *cut(p) > *cut(*longest))) {
                    longest = &p;
                }
            }
            for (const sheet_place& p : places_) {
                if (whom != nullptr && longest != nullptr && p.rule && covers(*whom, p.at) &&
                    cut(p) && *cut(p) < *cut(*longest) && seen.emplace(*p.rule, n).second) {
                    say(sheet_doubt::limit, p,
                        in_quotes(title(the_body(), p.at)) + when() + " breaks the clause of " +
                            in_quotes(l.from.empty() ? standard.id : l.from) + "; found " +
                            length_words(p.asked) + from(p) + ", shorter than " +
                            in_quotes(title(the_body(), longest->at)) + " with " +
                            length_words(longest->asked) + "; right is no shorter than the " +
                            l.not_below + basis_of(l));
                }
            }
        }
    }

    void untold() {
        std::string missing;
        for (const sheet_place& p : places_) {
            const instruction& i = p.asked;
            const bool by_hair = i.how == finish::leave || i.how == finish::card ||
                                 i.how == finish::thin || i.how == finish::hand_strip;
            if (!i.target && !i.blade && !by_hair) {
                missing += (missing.empty() ? "" : ", ") + title(the_body(), p.at);
            }
        }
        if (!missing.empty()) {
            out_.push_back(
                {sheet_doubt::untold, own_.at,
                 "zones of which nothing is said; found no length, blade or finish for " + missing +
                     "; write all = { length = \"13 mm\" } for the rest, or "
                     "finish = \"leave\""});
        }
    }

    /// Lines for the whole dog which the parent's narrower lines stop.
    void stopped() {
        for (const sheet_rule& r : sheet_.rules) {
            const selection* whom = parts_.find(r.whom);
            if (!r.from.empty() || whom == nullptr || whom->how != reach::all || !r.what.target) {
                continue;
            }
            std::string stay;
            for (const sheet_place& p : places_) {
                const bool parents = p.rule && !sheet_.rules[*p.rule].from.empty();
                if (parents && p.asked.target && *p.asked.target != *r.what.target) {
                    stay += (stay.empty() ? "" : ", ") + title(the_body(), p.at) + " " +
                            show(*p.asked.target);
                }
            }
            if (!stay.empty()) {
                out_.push_back({sheet_doubt::not_reached, r.at,
                                "a narrower line wins, the parent's too; found " +
                                    in_quotes(r.whom) + ", but these stay as in " +
                                    in_quotes(sheet_.extends) + ": " + stay +
                                    "; write them here as well, or scale = ... for all of them"});
            }
        }
    }

    void mixes() {
        if (sheet_.coats.empty() && sheet_.mixes.empty()) {
            out_.push_back({sheet_doubt::no_coat, own_.at,
                            "nothing says which dogs it is for; found neither coats nor mixes; "
                            "write coats = [\"wavy\"] or mixes = [\"poodle x golden retriever\"]"});
        }
        for (std::size_t i = 0; i < sheet_.mixes.size(); ++i) {
            try {
                suits(sheet_.mixes[i], mix_at(i));
            } catch (const bad_input& wrong) {
                out_.push_back({sheet_doubt::mix_unread, mix_at(i),
                                "a mix that can't be read, so no coat follows from it; " +
                                    wrong.all().front().text});
            }
        }
    }

  private:
    [[nodiscard]] const body& the_body() const { return known_.dog_body; }
    [[nodiscard]] std::string when() const {
        return season_ == nullptr ? "" : " in " + in_quotes(season_->name);
    }
    [[nodiscard]] written_at mix_at(std::size_t i) const {
        const bool own = i < own_.mixes_at.size() && own_.mixes_at[i].file == own_.at.file;
        return own ? own_.mixes_at[i] : own_.at;
    }

    /// Where the sheet's own file says it: the line, the season that scales it, or its id.
    [[nodiscard]] written_at where(const sheet_place& p) const {
        const sheet_rule* r = p.rule ? &sheet_.rules[*p.rule] : nullptr;
        if (season_ != nullptr && season_->at.file == own_.at.file) {
            const bool of_season =
                r != nullptr && *p.rule + season_->rules.size() >= sheet_.rules.size();
            return of_season ? r->at : season_->at;
        }
        return r != nullptr && r->from.empty() ? r->at : own_.at;
    }
    [[nodiscard]] std::string from(const sheet_place& p) const {
        const std::string& id = p.rule ? sheet_.rules[*p.rule].from : std::string{};
        return id.empty() ? "" : " from " + in_quotes(id);
    }
    void say(sheet_doubt what, const sheet_place& p, std::string text) {
        out_.push_back({what, where(p), std::move(text)});
    }
    /// Whether it is the first time; of a scaled season only what the sheet itself doesn't have.
    bool first(sheet_doubt what, const sheet_place& p, std::size_t other, std::size_t more = 0) {
        return told_->emplace(what, p.rule.value_or(0), other, more).second;
    }

    /// The length a place is cut to by the sheet alone: a blade counts as it is etched.
    [[nodiscard]] std::optional<length> cut(const sheet_place& p) const {
        if (keeps_length(p.asked) || p.asked.target) {
            return keeps_length(p.asked) ? std::nullopt : p.asked.target;
        }
        const blade* b = p.asked.blade ? find(known_.blades, *p.asked.blade) : nullptr;
        return b == nullptr ? std::nullopt : std::optional{b->stated.best};
    }

    static std::string length_words(const instruction& i) {
        return i.target ? show(*i.target) : "blade " + i.blade.value_or("");
    }
    static std::string span(const limit& l) {
        if (l.low && l.high) {
            return show(*l.low) + " to " + show(*l.high);
        }
        return l.low ? "at least " + show(*l.low) : "at most " + show(*l.high);
    }
    static std::string basis_of(const limit& l) {
        const std::string words = std::string(in_words(l.why.how)) +
                                  (l.why.from.empty() ? "" : ": " + l.why.from) +
                                  (l.why.relayed ? ", seen second-hand" : "");
        return " (" + words + (l.why.note.empty() ? "" : "; " + l.why.note) + ")";
    }
    [[nodiscard]] bool breaks(const sheet_place& p, const limit& l) const {
        if (keeps_length(p.asked)) {
            return false;
        }
        if (p.asked.target) {
            return (l.low && *p.asked.target < *l.low) || (l.high && *p.asked.target > *l.high);
        }
        const blade* b = p.asked.blade ? find(known_.blades, *p.asked.blade) : nullptr;
        return b != nullptr &&
               ((l.high && b->stated.best > *l.high) || (l.low && with_the_lay(*b) < *l.low));
    }
    /// The most a blade leaves on a coat of the sheet.
    [[nodiscard]] length with_the_lay(const blade& b) const {
        length most = b.stated.best;
        for (const coat_class k : coats_) {
            most = longer(most, cut_length(bare(b, direction::with_lay),
                                           coat_of(known_, k).lay_degrees.best, rules_.cut)
                                    .best);
        }
        return most;
    }

    static std::string stops_at(const coat& c) {
        const figure<length>& most = longest_terminal(c);
        return "a " + c.title + " stops at about " + show(most.best) + " (" + number(most.low) +
               " to " + number(most.high) + ", " + std::string(in_words(most.why.how)) + ")";
    }

    void beyond(const sheet_place& p) {
        if (!p.asked.target || keeps_length(p.asked)) {
            return;
        }
        if (none_reaches(coats_, *p.asked.target)) {
            if (first(sheet_doubt::beyond_coat, p, 0)) {
                say(sheet_doubt::beyond_coat, p,
                    "longer than the coat grows; found " + show(*p.asked.target) + from(p) +
                        " for " + in_quotes(title(the_body(), p.at)) + when() + ", and " +
                        all_stop(coats_) + "; write at most " + show(longest_of(coats_)) +
                        ", or finish = \"leave\"");
            }
            return;
        }
        for (std::size_t i = 0; i < sheet_.mixes.size(); ++i) {
            no_coat_of_mix(p, i);
        }
    }
    [[nodiscard]] bool none_reaches(const std::vector<coat_class>& coats, const length& l) const {
        return !coats.empty() && l > longest_of(coats);
    }
    [[nodiscard]] length longest_of(const std::vector<coat_class>& coats) const {
        length most{};
        for (const coat_class k : coats) {
            most = longer(most, longest_terminal(coat_of(known_, k)).best);
        }
        return most;
    }
    [[nodiscard]] std::string all_stop(const std::vector<coat_class>& coats) const {
        std::string text;
        for (const coat_class k : coats) {
            text += (text.empty() ? "" : ", ") + stops_at(coat_of(known_, k));
        }
        return text;
    }

    void no_coat_of_mix(const sheet_place& p, std::size_t i) {
        std::vector<coat_class> may;
        try {
            may = coats_of_mix(sheet_.mixes[i], known_);
        } catch (const bad_input&) {
            return;  // told elsewhere
        }
        if (none_reaches(may, *p.asked.target) && first(sheet_doubt::beyond_coat, p, 100 + i)) {
            say(sheet_doubt::beyond_coat, p,
                "no coat of the mix grows so long; found " + show(*p.asked.target) + from(p) +
                    " for " + in_quotes(title(the_body(), p.at)) + when() + " on " +
                    in_quotes(sheet_.mixes[i]) + ": " + all_stop(may) +
                    "; write it shorter, or leave the mix out");
        }
    }

    void short_of(const sheet_place& p) {
        const zone& z = the_body().zones[p.at.zone];
        if (!z.has(zone_use::jacket) || keeps_length(p.asked)) {
            return;
        }
        for (const coat_class k : coats_) {
            const coat& c = coat_of(known_, k);
            const auto l = length_on(p.asked, c, known_, rules_.cut);
            if (l && in_hundredths(*l) < in_hundredths(c.shortest.best) &&
                first(sheet_doubt::too_short, p, static_cast<std::size_t>(k))) {
                say(sheet_doubt::too_short, p,
                    "below the shortest advisable; found " + length_words(p.asked) + from(p) +
                        " for " + in_quotes(title(the_body(), p.at)) + when() + " on a " + c.title +
                        "; right is at least " + show(c.shortest.best) + " (" +
                        std::string(in_words(c.shortest.why.how)) + ")");
            }
        }
    }

    void refusals(const sheet_place& p) {
        const blade* b = p.asked.blade ? find(known_.blades, *p.asked.blade) : nullptr;
        if (b == nullptr) {
            return;
        }
        const zone& z = the_body().zones[p.at.zone];
        zone_today t;
        t.where = &z;
        t.clean = (z.has(zone_use::clean_face) && sheet_.face == "clean") ||
                  (z.has(zone_use::clean_feet) && sheet_.feet == "clean");
        t.pattern = z.has(zone_use::pattern_cheek);
        t.show = sheet_.show;
        const direction way =
            p.asked.way == lay_choice::against_lay ? direction::against_lay : direction::with_lay;
        const auto no = refuse(bare(*b, way), t, rules_.refusal, rules_.cut);
        if (no && first(sheet_doubt::refused, p, p.at.zone)) {
            say(sheet_doubt::refused, p,
                "a blade that isn't used there; found blade " + b->id + " " +
                    std::string(name(way)) + from(p) + " for " +
                    in_quotes(title(the_body(), p.at)) + ": " + std::string(reason(*no)) +
                    "; write another blade, or a length");
        }
    }

    void loose(const sheet_place& p) {
        if (!p.asked.target || keeps_length(p.asked)) {
            return;
        }
        const bool head = the_body().zones[p.at.zone].where == group::head;
        const length tol =
            p.asked.tolerance.value_or(tolerance(*p.asked.target, head, rules_.prices));
        for (std::size_t n = 0; n < sheet_.limits.size(); ++n) {
            const limit& l = sheet_.limits[n];
            const selection* whom = parts_.find(l.whom);
            const bool low = l.low && in_hundredths(*p.asked.target - tol) < in_hundredths(*l.low);
            const bool high =
                l.high && in_hundredths(*p.asked.target + tol) > in_hundredths(*l.high);
            if (whom == nullptr || !covers(*whom, p.at) || !(low || high) ||
                !first(sheet_doubt::loose, p, n)) {
                continue;
            }
            const length room = shorter(l.low ? *p.asked.target - *l.low : tol,
                                        l.high ? *l.high - *p.asked.target : tol);
            say(sheet_doubt::loose, p,
                "a tolerance that reaches beyond the limit; found " + show(*p.asked.target) +
                    from(p) + ", give or take " + show(tol) + ", for " +
                    in_quotes(title(the_body(), p.at)) + when() + ", and right is " + span(l) +
                    (in_mm(room) >= 0.1 ? "; write tolerance = \"" + number(room) + " mm\" at most"
                                        : "; write a length further inside"));
        }
    }

    [[nodiscard]] const sheet_place* one_at(std::size_t zone, side which) const {
        for (const sheet_place& p : places_) {
            if (p.at.zone == zone &&
                (p.at.which == side::both || which == side::both || p.at.which == which)) {
                return &p;
            }
        }
        return nullptr;
    }

    void steps() {
        const std::vector<seam>& seams = the_body().seams;
        for (std::size_t i = 0; i < seams.size(); ++i) {
            if (laid_.kind_of(i) == seam_kind::blend) {
                for (const side s : {side::left, side::right}) {
                    step_at(seams[i], i, s);
                }
            }
        }
    }

    /// A face or foot clipped close beside hair left long ends in a line (common practice).
    [[nodiscard]] bool edge_on_purpose(const sheet_place& longer_one,
                                       const sheet_place& shorter_one) const {
        const zone& from = the_body().zones[longer_one.at.zone];
        const zone& into = the_body().zones[shorter_one.at.zone];
        const blade* b =
            shorter_one.asked.blade ? find(known_.blades, *shorter_one.asked.blade) : nullptr;
        return b != nullptr && detail::how_short(*b) != detail::shortness::longer &&
               ((from.where == group::head && into.where == group::head) ||
                into.where == group::feet);
    }

    /// How wide the step can be sloped: a share of the seam's length, or the whole of a scissored zone,
    /// which is about as wide as its seam is long (assumption). A slope steeper than it is wide shows
    /// as an edge (assumption).
    [[nodiscard]] length room_for(const sheet_place& high, const seam& s) const {
        const bool scissored =
            high.asked.how == finish::scissor || high.asked.how == finish::thin ||
            high.asked.how == finish::comb_then_scissor || high.asked.how == finish::hand_strip;
        return scissored ? s.along.best : s.along.best * rules_.prices.blend_room.best;
    }

    void step_at(const seam& s, std::size_t index, side which) {
        const sheet_place* a = one_at(s.a, which);
        const sheet_place* b = one_at(s.b, which);
        if (a == nullptr || b == nullptr) {
            return;
        }
        const price_rules& p = rules_.prices;
        for (const coat_class k : coats_) {
            const coat& c = coat_of(known_, k);
            const auto x = length_on(a->asked, c, known_, rules_.cut);
            const auto y = length_on(b->asked, c, known_, rules_.cut);
            if (!x || !y || keeps_length(a->asked) || keeps_length(b->asked)) {
                continue;
            }
            const sheet_place& high = *x < *y ? *b : *a;
            const sheet_place& low = *x < *y ? *a : *b;
            const length step = gap(*x, *y);
            const length room = room_for(high, s);
            if (!shows(step, p) || in_hundredths(step) <= in_hundredths(room) ||
                edge_on_purpose(high, low) ||
                !told_->emplace(sheet_doubt::step, index, 0, 0).second) {
                continue;
            }
            const sheet_place& at = own_line(high) || !own_line(low) ? high : low;
            say(sheet_doubt::step, at,
                "a step too high to blend; found " + title(the_body(), high.at) + " " +
                    show(longer(*x, *y)) + " beside " + title(the_body(), low.at) + " " +
                    show(shorter(*x, *y)) + when() + ", and there is room to blend " + show(room) +
                    " (our guess); bring them nearer, or write [[seam]] a = " +
                    in_quotes(the_body().zones[s.a].id) +
                    ", b = " + in_quotes(the_body().zones[s.b].id) + ", kind = \"line\"");
        }
    }
    [[nodiscard]] bool own_line(const sheet_place& p) const {
        return p.rule && sheet_.rules[*p.rule].from.empty();
    }

    void suits(const std::string& mix, const written_at& at) {
        const coat_answer a = coats_of(read_mix(mix, known_.genes).dog, known_.genes, known_.coats);
        const coat_class likeliest = a.likeliest();
        if (!sheet_.coats.empty() &&
            std::find(sheet_.coats.begin(), sheet_.coats.end(), likeliest) == sheet_.coats.end()) {
            out_.push_back({sheet_doubt::other_coat, at,
                            "a mix whose likeliest coat the sheet isn't for; found " +
                                in_quotes(mix) +
                                (at.line == own_.at.line && !own_.extends.empty()
                                     ? " from " + in_quotes(own_.extends)
                                     : "") +
                                ", a " + coat_of(known_, likeliest).title + "; right is a " +
                                coat_names_of(sheet_.coats, known_) + ", or " +
                                in_quotes(name(likeliest)) + " among the coats"});
        }
    }

    const style& own_;
    const style& sheet_;
    const season* season_;
    const catalogue& known_;
    const rule_book& rules_;
    part_index parts_;
    laid_sheet laid_;
    std::vector<sheet_place> places_;
    std::vector<coat_class> coats_;
    std::vector<sheet_warning>& out_;
    told* told_ = nullptr;
};

void in_order(std::vector<sheet_warning>& all) {
    std::stable_sort(all.begin(), all.end(), [](const sheet_warning& a, const sheet_warning& b) {
        return std::tie(a.at.line, a.at.column, a.text) < std::tie(b.at.line, b.at.column, b.text);
    });
}

}  // namespace

std::string_view name(sheet_doubt d) {
    constexpr std::array<std::string_view, 11> names{
        "limit",      "refused",    "beyond-coat", "step",        "too-short", "untold",
        "mix-unread", "other-coat", "no-coat",     "not-reached", "loose"};
    return names[static_cast<std::size_t>(d)];
}

std::vector<coat_class> coats_for(const style& s, const catalogue& c) {
    std::vector<coat_class> out = s.coats;
    for (const std::string& m : out.empty() ? s.mixes : std::vector<std::string>{}) {
        try {
            for (const coat_class k : coats_of_mix(m, c)) {
                out.push_back(k);
            }
        } catch (const bad_input&) {
            continue;  // no coat follows from it
        }
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

std::vector<sheet_place> places_of(const style& s, const body& b, const part_index& parts) {
    const laid_sheet laid(b, parts, s);
    std::vector<const selection*> meant;
    for (const sheet_rule& r : s.rules) {
        meant.push_back(parts.find(r.whom));
    }
    // the narrowest that gives a length, the later of equals
    const auto rule_for = [&](const place& p) {
        std::optional<std::size_t> found;
        for (std::size_t i = 0; i < meant.size(); ++i) {
            const instruction& what = s.rules[i].what;
            if ((what.target || what.blade) && covers(*meant[i], p) &&
                (!found || !wider(*meant[i], *meant[*found]))) {
                found = i;
            }
        }
        return found;
    };
    std::vector<sheet_place> out;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        const bool two = b.zones[z].paired && laid.one_sided(z);
        for (const side one :
             two ? std::vector{side::left, side::right} : std::vector{side::both}) {
            sheet_place p{{z, one}, laid.at({z, one}), rule_for({z, one})};
            const bool prep = b.zones[z].where == group::prep;
            if (!prep || p.asked.target || p.asked.blade || p.asked.how) {
                out.push_back(std::move(p));
            }
        }
    }
    return out;
}

std::optional<length> length_on(const instruction& i, const coat& c, const catalogue& known,
                                const cut_rules& rules) {
    if (keeps_length(i)) {
        return std::nullopt;
    }
    if (i.target) {
        return i.target;
    }
    const blade* b = i.blade ? find(known.blades, *i.blade) : nullptr;
    if (b == nullptr) {
        return std::nullopt;
    }
    const direction way =
        i.way == lay_choice::against_lay ? direction::against_lay : direction::with_lay;
    return rounded(cut_length(bare(*b, way), c.lay_degrees.best, rules)).best;
}

std::vector<sheet_warning> doubts_about(const style& s, const catalogue& c,
                                        const rule_book& rules) {
    std::vector<sheet_warning> out;
    sheet_judge::told told;
    sheet_judge plain(s, s, nullptr, c, rules, out);
    plain.mixes();
    plain.untold();
    plain.stopped();
    plain.lengths(told);
    std::set<std::pair<std::size_t, std::size_t>> seen;
    plain.clauses(s, seen);
    for (const season& one : s.seasons) {
        sheet_judge::told also = told;
        const style then = in_season(s, one);
        sheet_judge season_of(s, then, &one, c, rules, out);
        season_of.lengths(also);
        auto too = seen;
        season_of.clauses(s, too);
    }
    in_order(out);
    return out;
}

std::vector<sheet_warning> broken_limits(const style& s, const style& standard,
                                         const catalogue& c) {
    std::vector<sheet_warning> out;
    std::set<std::pair<std::size_t, std::size_t>> told;
    sheet_judge plain(s, s, nullptr, c, c.rules, out);
    plain.limits(standard, told);
    // a sheet's own doubts have its inherited clauses in them
    const bool told_already =
        standard.id == s.id || std::any_of(s.limits.begin(), s.limits.end(), [&](const limit& l) {
            return !l.not_below.empty() && l.from == standard.id;
        });
    if (!told_already) {
        plain.clauses(standard, told);
    }
    for (const season& one : s.seasons) {
        auto also = told;
        sheet_judge(s, in_season(s, one), &one, c, c.rules, out).limits(standard, also);
    }
    in_order(out);
    return out;
}

}  // namespace pelage
