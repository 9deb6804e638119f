// From the things of a question to what is asked: one thing, with what was said beside it.
#include <algorithm>
#include <array>
#include <utility>

#include <pelage/kit/asked.hpp>

#include "kit/asked_card.hpp"
#include "kit/asked_elsewhere.hpp"
#include "kit/asked_pieces.hpp"
#include "kit/asked_settle.hpp"
#include "kit/asked_strangers.hpp"
#include "model/mix_words.hpp"

namespace pelage {

namespace {

using namespace asking;

/// Whether two questions are about one and the same tool or length.
bool same_thing(const question& a, const question& b) {
    const auto comb = [](const question& q) { return q.tool.over ? q.tool.over->id : ""; };
    return a.what == b.what &&
           (a.what == question::form::of_length
                ? in_hundredths(a.wanted) == in_hundredths(b.wanted)
                : a.tool.tool.id == b.tool.tool.id && a.tool.tool.setting == b.tool.tool.setting &&
                      comb(a) == comb(b));
}

/// Whether the words are answered alike on every coat: nothing that takes it off.
bool no_coat_needed(const terms_asked& t) {
    return std::none_of(t.all.begin(), t.all.end(), [](const term* one) { return one->clips; });
}

/// Written as a mix is: brackets, a generation or genes first, an x between.
bool is_written_mix(const std::vector<token>& words, const lookup_request& r) {
    if (r.kind != asked_kind::any || words.empty() ||
        (words.size() == 1 && words.front().low == "cross")) {
        return false;
    }
    const std::string& first = words.front().low;
    const bool by = std::any_of(words.begin(), words.end(), [](const token& t) {
        return t.low == "x" || t.low == "cross" || t.low == "\u00d7" || t.low == "+";
    });
    return by || first == "genotype" || r.text.find("\u00d7") != std::string::npos ||
           std::any_of(words.begin(), words.end(),
                       [](const token& t) { return mix_words::like_generation(t.low); });
}

std::optional<direction> way_of(const piece& p) {
    if (!of_kind(p, piece_kind::term)) {
        return std::nullopt;
    }
    if (p.means->id == "against-the-lay") {
        return direction::against_lay;
    }
    return p.means->id == "with-the-lay" ? std::optional{direction::with_lay} : std::nullopt;
}

/// The directions said beside a tool or a place, which are no things of their own there.
std::vector<direction> take_ways(std::vector<piece>& all) {
    std::vector<direction> out;
    for (const piece& p : all) {
        if (const auto way = way_of(p)) {
            out.push_back(*way);
        }
    }
    std::erase_if(all, [](const piece& p) { return way_of(p).has_value(); });
    return out;
}

asked_back each_by_itself(const std::vector<piece>& all) {
    asked_back out;
    for (const piece& p : all) {
        switch (p.kind) {
            case piece_kind::tool:
            case piece_kind::place:
            case piece_kind::term:
            case piece_kind::coat:
            case piece_kind::breed:
            case piece_kind::places_asked:
            case piece_kind::terms_asked:
                out.readings.push_back(p.text);
                break;
            default:
                break;
        }
    }
    return out;
}

/// The question in hand.
class question_reader {
  public:
    explicit question_reader(const lookup_request& r)
        : r_(r), words_(tokens_of(r.text)), known_(r) {}

    asked read() {
        if (auto but = places_but(known_, r_)) {  // in a bracket, as a card has it
            return {std::move(*but)};
        }
        if (is_written_mix(words_, r_)) {
            return {mix_asked{r_.text}};
        }
        if (r_.kind != asked_kind::any || r_.text.size() > 200 || words_.empty()) {
            return {tools_asked{{read_question(r_)}}};
        }
        if (auto figures = about_figures(known_, r_)) {
            return {std::move(*figures)};
        }
        pieces_ = known_.pieces(words_, r_);
        if (count(pieces_, piece_kind::breed) == 0) {  // "7 and a half" is nobody's mother
            for (piece& p : pieces_) {
                p.kind = of_kind(p, piece_kind::crossing) ? piece_kind::stranger : p.kind;
            }
        }
        if (auto card = about_a_card(pieces_, words_, r_)) {
            return {std::move(*card)};
        }
        if (auto elsewhere = asked_elsewhere(pieces_, words_, r_)) {
            return {std::move(*elsewhere)};
        }
        if (auto health = about_health(pieces_, words_, known_, r_)) {
            return {std::move(*health)};
        }
        if (count(pieces_, piece_kind::stranger) > 0) {
            return about_strangers(pieces_, words_, known_, r_);
        }
        if (auto list = only_a_list(pieces_)) {
            return {*list};
        }
        felted_to_the_skin(pieces_, pelage::words_of(r_));
        say_what_fillers_mean(pieces_);
        comb_over_each(pieces_, r_);
        if (auto carrying = comb_on_a_blade(pieces_, r_)) {
            return {std::move(*carrying)};
        }
        only_ = drop_tool_words(pieces_);
        settle_by_neighbours(pieces_, words_of(r_), known_.terms());
        drop_asking_words(pieces_);
        asked out = thing();
        add_circumstances(out);
        return out;
    }

  private:
    asked thing() {
        if (const auto several = all_of(pieces_, piece_kind::places_asked); !several.empty()) {
            const std::string& word = several.front()->text;
            return {asked_back{asked_back::cause::places, word, known_.places().asked(word)}};
        }
        const std::size_t tools = count(pieces_, piece_kind::tool);
        const std::size_t places = count(pieces_, piece_kind::place);
        if (count(pieces_, piece_kind::extreme) > 0 && tools == 0 && places == 0) {
            return about_the_extreme(all_of(pieces_, piece_kind::extreme).front()->text, only_, r_);
        }
        const piece& end = pieces_.back();
        const bool hangs = end.kind == piece_kind::telling_apart &&
                           (end.text == "vs" || end.text == "versus" || end.text == "than");
        if (hangs && tools == 1 && places == 0) {
            return {asked_back{
                asked_back::cause::beside, all_of(pieces_, piece_kind::tool).front()->text, {}}};
        }
        if (tools == 1 && places > 0 && a_length_by_hand()) {
            return about_place(places);  // "3 mm ear edges": nothing of the kit goes there
        }
        if (tools > 0) {
            return about_tools(tools, places);
        }
        if (places > 0) {
            return about_place(places);
        }
        if (count(pieces_, piece_kind::term) + count(pieces_, piece_kind::terms_asked) > 0) {
            return about_terms();
        }
        return about_a_dog();
    }

    /// A length for places that are scissored, whatever leaves it elsewhere.
    [[nodiscard]] bool a_length_by_hand() const {
        const std::string& text = all_of(pieces_, piece_kind::tool).front()->text;
        if (read_tool(text, r_).what != question::form::of_length) {
            return false;
        }
        const auto all = all_of(pieces_, piece_kind::place);
        return std::all_of(all.begin(), all.end(), [&](const piece* p) {
            return std::all_of(p->places.begin(), p->places.end(), [&](const place& at) {
                return r_.reference.dog_body.zones[at.zone].has(zone_use::scissors_only);
            });
        });
    }

    [[nodiscard]] std::vector<const term*> terms_said() const {
        std::vector<const term*> out;
        const auto add = [&](const term* t) {
            if (std::find(out.begin(), out.end(), t) == out.end()) {
                out.push_back(t);
            }
        };
        for (const piece* p : all_of(pieces_, piece_kind::term)) {
            add(p->means);
            for (const std::string& id : p->means->parts) {
                add(find(words_of(r_).terms, id));
            }
        }
        // what hurts a dog is told first
        std::stable_partition(out.begin(), out.end(),
                              [](const term* t) { return t->kind == term_kind::harm; });
        return out;
    }

    asked about_tools(std::size_t tools, std::size_t places) {
        const std::vector<direction> ways = take_ways(pieces_);
        const bool apart =
            count(pieces_, piece_kind::telling_apart) + count(pieces_, piece_kind::joining) > 0;
        tools_asked out;
        out.beside = terms_said();
        if (count(pieces_, piece_kind::terms_asked) > 0 || places > 1 || ways.size() > 1 ||
            (tools > 1 && !apart) || tools > 4 || out.beside.size() > most_together) {
            return {each_by_itself(pieces_)};
        }
        for (const piece* p : all_of(pieces_, piece_kind::tool)) {
            question q = read_tool(p->text, r_);
            q.only = only_;
            out.same = out.same || std::any_of(out.all.begin(), out.all.end(),
                                               [&](const auto& o) { return same_thing(o, q); });
            if (std::none_of(out.all.begin(), out.all.end(),
                             [&](const question& o) { return same_thing(o, q); })) {
                out.all.push_back(std::move(q));
            }
        }
        if (pieces_.size() == 1) {
            out.all.front().said = detail::trimmed(r_.text);
        }
        if (tools == 1 && !apart) {
            take_teeth(out.all.front(), out.beside, r_);
        }
        asked a{std::move(out)};
        if (!ways.empty()) {
            a.way = ways.front();
        }
        if (places == 1) {
            a.where = all_of(pieces_, piece_kind::place).front()->places;
        }
        return a;
    }

    /// Places that are words of the trade of their own: "furnishings vs feathering".
    [[nodiscard]] std::optional<terms_asked> words_told_apart() const {
        terms_asked out;
        for (const piece* p : all_of(pieces_, piece_kind::place)) {
            if (p->means == nullptr) {
                return std::nullopt;
            }
            out.all.push_back(p->means);
        }
        return out;
    }

    asked about_place(std::size_t places) {
        const std::vector<direction> ways = take_ways(pieces_);
        const bool against =
            std::find(ways.begin(), ways.end(), direction::against_lay) != ways.end();
        const bool others =
            count(pieces_, piece_kind::term) + count(pieces_, piece_kind::terms_asked) > 0;
        if (places > 1 && count(pieces_, piece_kind::telling_apart) > 0 && !others) {
            if (auto words = words_told_apart()) {
                return {std::move(*words)};
            }
        }
        if (count(pieces_, piece_kind::terms_asked) > 0 || places > most_together) {
            return {each_by_itself(pieces_)};
        }
        const piece& p = *all_of(pieces_, piece_kind::place).front();
        if (!p.also_breed.empty() && words_.size() == 1) {
            return {asked_back{asked_back::cause::breed_too,
                               p.text,
                               {title(r_.reference.dog_body, p.places.front()), p.also_breed}}};
        }
        place_asked out{p.text, p.places, p.means, terms_said(), against};
        for (const piece* more : all_of(pieces_, piece_kind::place)) {
            if (more == &p) {
                continue;
            }
            out.word += " and " + more->text;
            out.said = nullptr;
            for (const place& at : more->places) {
                if (std::find(out.places.begin(), out.places.end(), at) == out.places.end()) {
                    out.places.push_back(at);
                }
            }
        }
        return {std::move(out)};
    }

    asked about_terms() {
        if (const auto several = all_of(pieces_, piece_kind::terms_asked); !several.empty()) {
            asked_back out{asked_back::cause::terms, several.front()->text, {}};
            terms_asked each;
            for (const std::string& id : several.front()->several->means) {
                each.all.push_back(find(words_of(r_).terms, id));
                out.readings.push_back(each.all.back()->title);
            }
            // whichever is meant, the answer to a double coat is the same no
            const bool clip = std::all_of(each.all.begin(), each.all.end(),
                                          [](const term* t) { return t->clips; });
            if (clip && double_coat_said(pieces_, r_)) {
                return {std::move(each)};
            }
            return {out};
        }
        terms_asked out{terms_said()};
        if (out.all.size() > most_together) {
            return {each_by_itself(pieces_)};
        }
        return {std::move(out)};
    }

    asked about_a_dog() {
        const auto breeds = all_of(pieces_, piece_kind::breed);
        const auto coats = all_of(pieces_, piece_kind::coat);
        if (breeds.size() == 2 && coats.empty()) {
            const std::string mix = breeds[0]->text + " x " + breeds[1]->text;
            if (count(pieces_, piece_kind::crossing) > 0) {
                return {mix_asked{mix}};
            }
            return {
                asked_back{asked_back::cause::cross, {}, {mix, breeds[0]->text, breeds[1]->text}}};
        }
        if (breeds.size() == 1 && coats.empty()) {
            const bool plain = count(pieces_, piece_kind::crossing) == 0;
            return {mix_asked{plain ? breeds[0]->text : r_.text}};
        }
        if (coats.size() == 1 && breeds.empty()) {
            return {coat_asked{coats[0]->coat, coats[0]->means}};
        }
        if (breeds.size() + coats.size() > 1) {
            return {each_by_itself(pieces_)};
        }
        // only words that say nothing
        strangers none;
        none.words.push_back({words_of(words_, 0, words_.size()), {}});
        return {none};
    }

    /// The coat said beside the thing, or taken from the breed.
    void add_circumstances(asked& a) const {
        const bool takes = std::holds_alternative<tools_asked>(a.what) ||
                           std::holds_alternative<place_asked>(a.what) ||
                           std::holds_alternative<terms_asked>(a.what);
        const auto coats = all_of(pieces_, piece_kind::coat);
        const auto breeds = all_of(pieces_, piece_kind::breed);
        if (!takes || coats.size() + breeds.size() == 0) {
            return;
        }
        if (coats.size() + breeds.size() > 1) {
            a.what = each_by_itself(pieces_);
            return;
        }
        if (!coats.empty()) {
            a.coat = coats.front()->coat;
            return;
        }
        a.breed = breeds.front()->text;
        if (auto* words = std::get_if<terms_asked>(&a.what);
            words != nullptr && no_coat_needed(*words)) {
            const asked_breed* open =
                mix_words::asked_of(r_.reference.genes, mix_words::plain_name(a.breed));
            if (open != nullptr) {
                words->open = open;
                words->breed = std::exchange(a.breed, {});
                return;
            }
        }
        a.coat = expect_coat(a.breed, r_.reference.genes, r_.reference.coats).may_be.likeliest();
    }

    static constexpr std::size_t most_together = 4;  // things that are answered together

    const lookup_request& r_;
    asked_kind only_ = asked_kind::any;
    std::vector<token> words_;
    vocabulary known_;
    std::vector<piece> pieces_{};
};

}  // namespace

asked read_asked(const lookup_request& r) {
    return question_reader(r).read();
}

}  // namespace pelage
