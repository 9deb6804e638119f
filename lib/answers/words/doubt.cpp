// What is doubtful about a sheet, in words: what is doubtful; what was found; what would be right.
#include "answers/words/doubt.hpp"

#include <algorithm>
#include <tuple>

#include <pelage/base/phrase.hpp>

#include "answers/words/bound.hpp"
#include "answers/words/refusal.hpp"
#include "answers/words/sheet.hpp"
#include "data/faults.hpp"

namespace pelage::io {

namespace {

std::string in_quotes(std::string_view s) {
    return '"' + std::string(s) + '"';
}

class doubt_writer {
  public:
    doubt_writer(const reference_data& c, length_unit u) : known_(c), units_(u) {}

    std::string operator()(const broken_limit& d) const {
        return in_quotes(title_of(d.found.at)) + when(d.found) + " breaks the limit of " +
               in_quotes(d.standard) + "; found " + length_of(d.found) + from(d.found) +
               "; right is " + span_words(bounds(d.right), units_) + basis_of(d.right);
    }
    std::string operator()(const broken_clause& d) const {
        return in_quotes(title_of(d.found.at)) + when(d.found) + " breaks the clause of " +
               in_quotes(d.standard) + "; found " + length_of(d.found) + from(d.found) +
               ", shorter than " + in_quotes(title_of(d.longest.at)) + " with " +
               length_of(d.longest) + "; right is no shorter than the " + d.right.not_below +
               basis_of(d.right);
    }
    std::string operator()(const refused_blade& d) const {
        return "a blade that isn't used there; found blade " + d.found.blade + " " +
               std::string(name(d.way)) + from(d.found) + " for " +
               in_quotes(title_of(d.found.at)) + when(d.found) + ": " +
               std::string(refusal_words(d.why)) + "; write another blade, or a length";
    }
    std::string operator()(const beyond_coats& d) const {
        const std::string found = "; found " + length_of(d.found) + from(d.found) + " for " +
                                  in_quotes(title_of(d.found.at)) + when(d.found);
        return d.mix.empty()
                   ? "longer than the coat grows" + found + ", and " + all_stop(d.coats) +
                         "; write at most " + shown(printed_no_more(d.most, units_)) +
                         ", or finish = \"leave\""
                   : "no coat of the mix grows so long" + found + " on " + in_quotes(d.mix) + ": " +
                         all_stop(d.coats) + "; write it shorter, or leave the mix out";
    }
    std::string operator()(const high_step& d) const {
        return "a step too high to blend; found " + left_at(d.longer) + " beside " +
               left_at(d.shorter) + in_season(d.season) + ", and there is room to blend " +
               shown(d.room) +
               " (our guess); bring them nearer, or write [[seam]] a = " + zone_id(d.a) +
               ", b = " + zone_id(d.b) + ", kind = \"line\"";
    }
    std::string operator()(const under_shortest& d) const {
        const coat& c = coat_of(known_, d.on);
        return "below the shortest advisable; found " + length_of(d.found) + from(d.found) +
               " for " + in_quotes(title_of(d.found.at)) + when(d.found) + " on a " + c.title +
               "; right is at least " + shown(printed_no_less(c.shortest.best, units_)) + " (" +
               std::string(in_words(c.shortest.why.how)) + ")";
    }
    std::string operator()(const untold_zones& d) const {
        std::vector<std::string> where;
        for (const place& p : d.where) {
            where.push_back(title_of(p));
        }
        return "zones of which nothing is said; found no length, blade or finish for " +
               joined(where, ", ") + "; write all = { length = " + in_quotes(shown(mm(13))) +
               " } for the rest, or finish = \"leave\"";
    }
    std::string operator()(const unread_mix& d) const {
        return "a mix that can't be read, so no coat follows from it; " + d.complaint;
    }
    std::string operator()(const unfit_mix& d) const {
        std::vector<std::string> right;
        for (const coat_class k : d.right) {
            right.push_back(coat_of(known_, k).title);
        }
        return "a mix whose likeliest coat the sheet isn't for; found " + in_quotes(d.mix) +
               (d.from.empty() ? "" : " from " + in_quotes(d.from)) + ", a " +
               coat_of(known_, d.likeliest).title + "; right is a " + one_of(right) + ", or " +
               in_quotes(name(d.likeliest)) + " among the coats";
    }
    std::string operator()(const no_coats& /*none*/) const {
        return "nothing says which dogs it is for; found neither coats nor mixes; write coats = "
               "[\"wavy\"] or mixes = [\"poodle x golden retriever\"]";
    }
    std::string operator()(const stopped_line& d) const {
        std::vector<std::string> stay;
        for (const auto& one : d.stay) {
            stay.push_back(left_at(one));
        }
        return "a narrower line wins, the parent's too; found " + in_quotes(d.whom) +
               ", but these stay as in " + in_quotes(d.parent) + ": " + joined(stay, ", ") +
               "; write them here as well, or scale = ... for all of them";
    }
    std::string operator()(const loose_tolerance& d) const {
        const length room = printed_no_more(d.room.value_or(length{}), units_);
        return "a tolerance that reaches beyond the limit; found " + length_of(d.found) +
               from(d.found) + ", give or take " + shown(d.tolerated) + ", for " +
               in_quotes(title_of(d.found.at)) + when(d.found) + ", and right is " +
               span_words(bounds(d.right), units_) +
               (in_mm(room) > 0.0 ? "; write tolerance = " + in_quotes(shown(room)) + " at most"
                                  : "; write a length further inside");
    }
    std::string operator()(const unsigned_jacket_clip& d) const {
        return "a double coat is carded, not clipped, unless its owner agrees in writing; found " +
               length_of(d.found) + from(d.found) + " for " + in_quotes(title_of(d.found.at)) +
               when(d.found) + " on a " + coat_of(known_, d.on).title +
               (d.mix.empty() ? "" : ", the likeliest of " + in_quotes(d.mix)) +
               ", and no consent; write consent = [\"clip-jacket\"], or finish = \"card\"";
    }
    std::string operator()(const other_file_name& d) const {
        return "a sheet's file is called by its id; found id = " + in_quotes(d.id) + " in " +
               escaped(d.stem, 200) + ".toml; call the file " + d.id + ".toml, or change the id";
    }

  private:
    [[nodiscard]] std::string shown(const length& l) const { return show(l, units_); }
    [[nodiscard]] std::string title_of(const place& p) const { return title(known_.dog_body, p); }
    [[nodiscard]] std::string zone_id(std::size_t z) const {
        return in_quotes(known_.dog_body.zones[z].id);
    }
    [[nodiscard]] std::string left_at(const std::pair<place, length>& p) const {
        return title_of(p.first) + " " + shown(p.second);
    }
    [[nodiscard]] std::string length_of(const sheet_says& s) const {
        return s.target ? shown(*s.target) : "blade " + s.blade;
    }
    static std::string from(const sheet_says& s) {
        return s.from.empty() ? "" : " from " + in_quotes(s.from);
    }
    static std::string in_season(const std::string& name) {
        return name.empty() ? "" : " in " + in_quotes(name);
    }
    static std::string when(const sheet_says& s) { return in_season(s.season); }
    /// The lengths of a limit without its clause.
    static limit bounds(limit l) {
        l.not_below.clear();
        return l;
    }
    static std::string basis_of(const limit& l) {
        return " (" + std::string(in_words(l.why.how)) +
               (l.why.from.empty() ? "" : ": " + l.why.from) +
               (l.why.relayed ? ", seen second-hand" : "") +
               (l.why.note.empty() ? "" : "; " + l.why.note) + ")";
    }
    [[nodiscard]] std::string all_stop(const std::vector<coat_class>& coats) const {
        std::vector<std::string> each;
        for (const coat_class k : coats) {
            const coat& c = coat_of(known_, k);
            const figure<length>& most = longest_terminal(c);
            each.push_back("a " + c.title + " stops at about " + shown(most.best) + " (" +
                           bare_number(most.low, units_) + " to " + bare_number(most.high, units_) +
                           ", " + std::string(in_words(most.why.how)) + ")");
        }
        return joined(each, ", ");
    }

    const reference_data& known_;
    length_unit units_;
};

void add_in_order(std::vector<told_doubt>& to, const std::vector<sheet_warning>& all,
                  const reference_data& c, length_unit u) {
    const auto begin = static_cast<std::ptrdiff_t>(to.size());
    for (const sheet_warning& w : all) {
        to.push_back({&w, doubt_words(w, c, u)});
    }
    std::stable_sort(to.begin() + begin, to.end(), [](const told_doubt& a, const told_doubt& b) {
        return std::tie(a.doubt->at.line, a.doubt->at.column, a.text) <
               std::tie(b.doubt->at.line, b.doubt->at.column, b.text);
    });
}

}  // namespace

std::string doubt_words(const sheet_warning& w, const reference_data& c, length_unit u) {
    return std::visit(doubt_writer(c, u), w.found);
}

std::vector<told_doubt> told_doubts(const checked_sheet& s, const reference_data& c,
                                    length_unit u) {
    std::vector<told_doubt> out;
    add_in_order(out, s.doubts, c, u);
    add_in_order(out, s.broken, c, u);
    return out;
}

}  // namespace pelage::io
