// --length as it is said in a shop: "16 mm", "7F all off", "half inch all over, legs 16 mm".
#include <algorithm>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/model/mix.hpp>

#include "length_asked_back.hpp"
#include "length_wish.hpp"

namespace pelage::cli {

namespace {

/// What is said of a double coat before any length; empty of others, or where the coat isn't known.
std::string first_of_a_double_coat(const dog& d, const workplace& w) {
    std::optional<coat_class> c = d.coat;
    if (!c && !d.mix.empty()) {
        try {
            c = expect_coat(d.mix, w.reference.genes, w.reference.coats).may_be.likeliest();
        } catch (const error&) {  // told where the mix is read
            return {};
        }
    }
    return c && double_coated(*c) ? coat_of(w.reference, *c).said_first : "";
}

/// The sheet leaves the whole dog about alike, so that a bare length or blade takes the place of all of it;
/// 1 mm, our own choice, is what a blade more or less may leave beside another.
bool about_one_length(const style& s) {
    std::optional<length> least;
    std::optional<length> most;
    for (const sheet_rule& r : s.rules) {
        if (r.what.target) {
            least = least ? shorter(*least, *r.what.target) : *r.what.target;
            most = most ? longer(*most, *r.what.target) : *r.what.target;
        }
    }
    return least && *most - *least <= mm(1.0);
}

/// The wishes one by one: commas between them, "but", "keep tail" behind another.
strings each_wish(const std::string& text) {
    strings out;
    for (const std::string& part : split_at(text, ',')) {
        strings words = split_at(part, ' ');
        std::size_t begin = 0;
        for (std::size_t i = 1; i < words.size(); ++i) {
            const bool but = words[i] == "but";
            const bool keeps = i + 1 < words.size() &&
                               any_of_these({words[i]}, {"keep", "leave"}) &&
                               !detail::is_digit(words[i + 1].front());
            if (!but && !keeps) {
                continue;
            }
            const std::size_t end = keeps && i > begin && words[i - 1] == "and" ? i - 1 : i;
            out.push_back(phrase(words, begin, end));
            begin = but ? i + 1 : i;
        }
        out.push_back(phrase(words, begin, words.size()));
    }
    std::erase(out, "");
    return out;
}

bool named_in(const std::vector<place>& said, const place& p) {
    return std::any_of(said.begin(), said.end(), [&](const place& s) { return share_side(s, p); });
}

/// A place whose both sides are told.
bool told_whole(const std::vector<place>& said, std::size_t zone) {
    const auto has = [&](side s) {
        return std::find(said.begin(), said.end(), place{zone, s}) != said.end();
    };
    return has(side::both) || (has(side::left) && has(side::right));
}

/// The wishes of one --length laid on a dog.
class wishes_laid {
  public:
    wishes_laid(const std::string& text, const workplace& w, dog& d, const service* booked,
                faults& f)
        : text_(text),
          w_(w),
          d_(d),
          booked_(booked),
          f_(f),
          first_(first_of_a_double_coat(d, w)),
          unnamed_(d.style.empty()) {
        if (unnamed_) {
            d_.style = "one-length";
        }
        sheet_ = find(w.styles, d_.style);
    }

    void lay() {
        wish_reader reader(w_, first_, f_);
        bool all_read = true;
        std::optional<wish> rest;
        for (const std::string& one : each_wish(text_)) {
            auto said = reader.read(one);
            all_read = all_read && said;
            if (said && said->rest) {
                rest = std::move(said);
            } else if (said) {
                lay_one(*said, reader.parts());
            }
        }
        if (rest) {
            lay_rest(*rest, reader.parts());
        } else if (unnamed_ && all_read && !whole_) {
            ask_what_is_missing(reader.parts());
        }
    }

  private:
    void lay_one(const wish& said, const part_index& parts) {
        const bool bare = said.whom.empty();
        const bool replaced =
            sheet_ != nullptr && (sheet_->adjustable || about_one_length(*sheet_));
        const bool whole = said.whom == strings{"all"} && !said.what.how;
        whole_ = whole_ || bare || said.whom == strings{"all"};
        // of a jacket that isn't clipped the answer is no, whatever the sheet has
        const bool asked_back = sheet_ != nullptr && !replaced && !clips_unsigned();
        if (whole && asked_back) {
            f_.say(errc::conflict,
                   "--length: one length over the whole dog, and the sheet \"" + d_.style +
                       "\" has several; found \"" + text_ +
                       "\"; say where: 'body 16 mm', or write --style one-length or kennel");
        } else if (bare && said.what.target && sheet_ != nullptr && sheet_->adjustable) {
            d_.body_length = said.what.target;
        } else if (bare && asked_back) {
            f_.say(errc::conflict, "--length: the sheet \"" + d_.style +
                                       "\" has no length of its own to replace; found \"" + text_ +
                                       "\"; say where: 'body " + text_ +
                                       "', or write another --style, such as one-length");
        } else {
            for (const std::string& whom : bare ? strings{"all"} : said.whom) {
                d_.departures.push_back({whom, said.what});
                if (const selection* s = parts.find(whom)) {
                    said_.insert(said_.end(), s->places.begin(), s->places.end());
                }
            }
        }
    }

    /// A double coat whose owner hasn't signed for clipping.
    [[nodiscard]] bool clips_unsigned() const {
        return !first_.empty() && std::find(d_.consents.begin(), d_.consents.end(),
                                            "clip-jacket") == d_.consents.end();
    }

    /// What is said of the rest, beneath all that was said of places. Left as it is it isn't prepared either.
    void lay_rest(const wish& rest, const part_index& parts) {
        d_.departures.insert(d_.departures.begin(), {"all", rest.what});
        const selection* all = parts.find("all");
        for (std::size_t i = 0; rest.what.how && i < w_.reference.dog_body.zones.size(); ++i) {
            if (!named_in(all->places, {i, side::both}) && !named_in(said_, {i, side::both})) {
                d_.departures.push_back({w_.reference.dog_body.zones[i].id, rest.what});
            }
        }
    }

    void ask_what_is_missing(const part_index& parts) const {
        std::vector<place> missing;
        for (const place& p : parts.find("all")->places) {
            const bool done = booked_ == nullptr || booked_->does(p.zone);
            if (done && !told_whole(said_, p.zone)) {
                missing.push_back(p);
            }
        }
        if (!missing.empty()) {
            ask_for_the_rest(text_, titles(w_.reference.dog_body, missing), first_, f_);
        }
    }

    const std::string& text_;
    const workplace& w_;
    dog& d_;
    const service* booked_;
    faults& f_;
    std::string first_;
    bool unnamed_;  // no sheet was named
    const style* sheet_ = nullptr;
    bool whole_ = false;  // something is said of the whole dog
    std::vector<place> said_{};
};

}  // namespace

void apply_lengths(const std::string& text, const workplace& w, dog& d, const service* booked,
                   faults& f) {
    if (!text.empty()) {
        wishes_laid(text, w, d, booked, f).lay();
    }
}

}  // namespace pelage::cli
