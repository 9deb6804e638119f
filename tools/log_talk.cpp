// The talk after a groom: what differed from the plan, one key a matter, Enter for nothing.
#include <algorithm>

#include <pelage/base/date.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/planner/planned_entry.hpp>

#include "resolve_log.hpp"
#include "resolve_words.hpp"

namespace pelage::cli {

namespace {

class talk {
  public:
    talk(asker& a, const workplace& w, const entry_checks& checks, bool planned,
         const std::vector<logged_mat>& found, log_entry& e)
        : ask_(a), w_(w), checks_(checks), planned_(planned), found_(found), e_(e) {}

    void all(const std::string& name) {
        ask_.say(name + ", " + in_words(e_.on) + ": " + summary());
        while (e_.services.empty()) {
            try {
                services();
            } catch (const nothing_said&) {
                ask_.say("  a word for it is needed");
            }
        }
        differed();
        if (!e_.mats) {
            mats();
        }
        if (!e_.took) {
            minutes();
        }
    }

  private:
    [[nodiscard]] std::string summary() const {
        if (e_.services.empty()) {
            return "nothing is planned";
        }
        const bool begun = e_.services == std::vector{service_kind::prep};
        return !planned_ ? "recorded without a plan"
               : begun   ? "groomed as planned for the first visit, up to the bath"
                         : "groomed as planned";
    }

    /// Enter where a word was asked for: that question isn't answered after all.
    struct nothing_said {};

    /// A line that `read` understands, asked again until it does, or nothing_said.
    template <class Read>
    auto value(const std::string& question, Read read) {
        const std::string text = ask_.line(question, [&](const std::string& s) {
            faults f;
            if (!s.empty()) {
                (void)read(s, f);
            }
            return f.told();
        });
        if (text.empty()) {
            throw nothing_said{};
        }
        faults none;
        return read(text, none);
    }

    /// The same, of what `check` may refuse: said once more it stands.
    template <class Read, class Check>
    auto checked(const std::string& question, Read read, Check check) {
        std::string refused;
        return value(question, [&](const std::string& s, faults& f) {
            auto out = read(s, f);
            if (f.none() && !s.empty() && s != refused) {
                faults odd;
                check(out, odd);
                if (!odd.none()) {
                    refused = s;
                    f.say(errc::range, odd.told() + "; the same again if it is so");
                }
            }
            return out;
        });
    }

    void differed() {
        while (true) {
            const char k = ask_.key(
                "What differed? Enter: nothing (more). s service, w who, t tools, l lengths,\n"
                "  m measured before, k skin, b behaviour, p price, x next visit, n note",
                "\nswtlmkbpxn");
            if (k == '\n') {
                return;
            }
            try {
                one(k);
            } catch (const nothing_said&) {
                ask_.say("  (left as it was)");
            }
        }
    }

    void one(char k) {
        switch (k) {
            case 's':
                return services();
            case 'w':
                e_.who = said("  Who groomed", k);
                return;
            case 't':
                return tools();
            case 'l':
                return lengths("  Left where, as body 19 mm, ears 25 mm", e_.left);
            case 'm':
                return lengths("  Measured before the cut, combed out and dry, as body 31 mm",
                               e_.found);
            case 'k':
                return skin();
            case 'b':
                e_.behaviour = said("  How was it on the table", k);
                return;
            case 'p':
                e_.price = value("  Price, as 60 or 60 EUR", [](const std::string& s, faults& f) {
                    return price_in("price", s, f);
                });
                return;
            case 'x':
                e_.next = value("  Next visit promised, as 2027-01-09",
                                [&](const std::string& s, faults& f) {
                                    return next_in("next visit", s, e_.on, f);
                                });
                return;
            default:
                e_.remarks = said("  Note", k);
        }
    }

    /// A text in the words of who types it. A place with its key as first letter ("body 7F" at "b") is none: it was
    /// typed one question too soon.
    std::string said(const std::string& question, char key) {
        const part_index parts(w_.reference.dog_body);
        return ask_.line(question, [&](const std::string& s) {
            const std::string word = std::string(1, key) + s.substr(0, s.find(' '));
            return !s.empty() && parts.find(word) != nullptr
                       ? "\"" + word +
                             "\" is a place; write l first for a length, t for a tool, or use "
                             "other words"
                       : "";
        });
    }

    void services() {
        const std::string names = joined(words_of(service_names), ", ");
        e_.services =
            value("  What was done (" + names + ")", [&](const std::string& s, faults& f) {
                return services_in("service", {s}, w_.reference, f);
            });
        if (std::find(e_.services.begin(), e_.services.end(), service_kind::full) ==
            e_.services.end()) {  // the plan was for a full groom
            e_.used.clear();
            std::erase_if(e_.left, [](const logged_length& l) { return !l.measured; });
        }
    }

    void tools() {
        const part_index parts(w_.reference.dog_body);
        const auto told = checked(
            "  A tool and its places, as blade 7F: body, legs",
            [&](const std::string& s, faults& f) { return tools_in("tool", {s}, w_, f); },
            [&](const auto& all, faults& f) { checks_.tools("tool", all, f); });
        for (const logged_tool& t : told) {
            forget_left(parts, e_.left, e_.used, t);
            put_told(parts, e_.used, t);
        }
    }

    void lengths(const std::string& question, std::vector<logged_length>& to) {
        const part_index parts(w_.reference.dog_body);
        const auto put = [&](std::vector<logged_length>& at, const auto& all) {
            for (const logged_length& l : all) {
                put_told(parts, at, l);
            }
        };
        const auto told = checked(
            question,
            [&](const std::string& s, faults& f) { return lengths_in("length", {s}, w_, f); },
            [&](const auto& all, faults& f) {
                log_entry then = e_;
                put(&to == &e_.left ? then.left : then.found, all);
                checks_.lengths({"left", "before"}, then, f);
            });
        put(to, told);
    }

    void skin() {
        const auto s = value("  Skin, as left ribs lump 10 mm, ear wet",
                             [&](const std::string& t, faults& f) { return skin_in(t, w_, f); });
        e_.skin.push_back({s->whom, s->what.state, s->what.size, s->what.known});
    }

    void mats() {
        // what the plan was made with is what was found, unless it is said otherwise
        std::vector<std::string> planned;
        for (const logged_mat& m : found_) {
            planned.push_back(m.whom);
        }
        const std::string unsaid =
            planned.empty() ? "Enter: none" : "Enter: " + joined(planned, ", ") + "; none";
        const std::string text = ask_.line(
            "Mats found (" + unsaid + "; else where, as ears, left armpit pelt; ? not looked)",
            [&](const std::string& s) {
                faults f;
                (void)(s.empty() || s == "?" ? std::nullopt : mats_in("mats", {s}, w_, f));
                return f.told();
            });
        if (text != "?") {
            faults none;
            e_.mats = text.empty() ? found_ : *mats_in("mats", {text}, w_, none);
        }
    }

    void minutes() {
        const std::string text =
            ask_.line("Minutes it took (Enter: not measured)", [](const std::string& s) {
                faults f;
                (void)(s.empty() ? std::nullopt : minutes_in("minutes", s, f));
                return f.told();
            });
        faults none;
        e_.took = text.empty() ? std::nullopt : minutes_in("minutes", text, none);
    }

    asker& ask_;
    const workplace& w_;
    const entry_checks& checks_;
    bool planned_;
    const std::vector<logged_mat>& found_;  ///< by the dog's file
    log_entry& e_;
};

}  // namespace

void ask_what_differed(asker& a, const workplace& w, const entry_checks& checks,
                       const std::string& name, bool planned, const std::vector<logged_mat>& found,
                       log_entry& e) {
    talk(a, w, checks, planned, found, e).all(name);
}

}  // namespace pelage::cli
