#include "intake_talk.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage::cli {

namespace {

bool is_number(const std::string& text) {
    return !text.empty() && text.size() < 4 &&
           text.find_first_not_of("0123456789") == std::string::npos;
}

/// Whether one of its words begins so; a name may be typed from any of its words on.
bool begins(const std::string& name, const std::string& text) {
    const std::string words = detail::plain(name);
    for (std::size_t at = 0; at != std::string::npos;) {
        if (words.compare(at, text.size(), text) == 0) {
            return true;
        }
        const auto blank = words.find(' ', at);
        at = blank == std::string::npos ? blank : blank + 1;
    }
    return false;
}

/// In lines that fit a terminal, those behind the first further in.
std::string in_lines(const std::string& text) {
    constexpr std::size_t widest = 78;
    std::string out;
    std::string line;
    const std::size_t margin = std::min(text.find_first_not_of(' '), std::size_t{8});
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t blank = std::min(text.find(' ', at + 1), text.size());
        const std::string word = text.substr(at, blank - at);
        if (line.size() + word.size() > widest && line.size() > margin) {
            out += line + "\n";
            line = std::string(margin + 1, ' ') + word;
        } else {
            line += word;
        }
        at = blank;
    }
    return out + line;
}

std::vector<std::string> names_of(const named_choice& c) {
    std::vector<std::string> out{c.name};
    if (!c.title.empty()) {
        out.push_back(c.title);
    }
    out.insert(out.end(), c.also.begin(), c.also.end());
    return out;
}

std::vector<std::size_t> fitting(const std::vector<named_choice>& all, const std::string& typed) {
    const std::string text = detail::plain(typed);
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < all.size() && !text.empty(); ++i) {
        const auto names = names_of(all[i]);
        const auto is = [&](const std::string& n) { return detail::plain(n) == text; };
        if (std::any_of(names.begin(), names.end(), is)) {
            return {i};
        }
        if (std::any_of(names.begin(), names.end(),
                        [&](const std::string& n) { return begins(n, text); })) {
            out.push_back(i);
        }
    }
    // "one" is one-length, though the words of cavapoo-one-length begin so, too
    const auto at_front = [&](std::size_t i) {
        return detail::plain(all[i].name).starts_with(text);
    };
    if (std::count_if(out.begin(), out.end(), at_front) == 1) {
        return {*std::find_if(out.begin(), out.end(), at_front)};
    }
    return out;
}

}  // namespace

std::optional<std::size_t> chosen(const std::vector<named_choice>& all, const std::string& text) {
    if (is_number(text)) {
        const auto n = static_cast<std::size_t>(std::stoi(text));
        return n >= 1 && n <= all.size() ? std::optional{n - 1} : std::nullopt;
    }
    const auto fit = fitting(all, text);
    return fit.size() == 1 ? std::optional{fit.front()} : std::nullopt;
}

std::vector<std::string> beginning_so(const std::vector<named_choice>& all,
                                      const std::string& text) {
    std::vector<std::string> out;
    for (const std::size_t i : is_number(text) ? std::vector<std::size_t>{} : fitting(all, text)) {
        out.push_back(all[i].name);
    }
    return out;
}

std::string choice_complaint(const std::string& what, const std::vector<named_choice>& all,
                             const std::string& text) {
    if (text.empty()) {
        return "type a number of the list, or the beginning of a name";
    }
    if (const auto several = beginning_so(all, text); several.size() > 1) {
        return "several begin so: " + joined(several, ", ") + "; type on";
    }
    std::vector<std::string> names;
    for (const named_choice& c : all) {
        const auto own = names_of(c);
        names.insert(names.end(), own.begin(), own.end());
    }
    return "no " + what + " of the list; found \"" + text + "\"" +
           did_you_mean(detail::plain(text), names);
}

bool whole_number(std::size_t of, const std::string& text) {
    return is_number(text) && text != "0" && std::stoul(text) * 10 > of && std::stoul(text) <= of;
}

std::string intake_talk::answered(const std::string& id,
                                  const std::function<bool(const std::string&)>& sound,
                                  const std::function<std::string()>& take) {
    auto& all = kept_.all;
    if (next_ < all.size()) {
        if (all[next_].question == id && sound(all[next_].text)) {
            return all[next_++].text;
        }
        all.resize(next_);  // the sheets or questions are others now
        ask_.say("(What was answered from here on doesn't fit any more and is asked again.)");
    }
    all.push_back({id, take()});
    ++next_;
    keep(kept_);
    return all.back().text;
}

void intake_talk::say(const std::string& text) {
    if (next_ >= kept_.all.size()) {
        ask_.say(in_lines(text));
    }
}

char intake_talk::key(const std::string& id, const std::string& question, std::string_view keys,
                      const std::vector<std::string>& names) {
    const auto key_of = [](const std::string& kept) { return kept.empty() ? '\n' : kept.front(); };
    return key_of(answered(
        id,
        [&](const std::string& kept) {
            return kept.size() < 2 && keys.find(key_of(kept)) != std::string_view::npos;
        },
        [&] {
            const char c = ask_.key(question, keys, names);
            return c == '\n' ? std::string{} : std::string(1, c);
        }));
}

bool intake_talk::yes(const std::string& id, const std::string& question) {
    return answered(
               id, [](const std::string& kept) { return kept == "y" || kept == "n"; },
               [&] { return std::string(ask_.yes(question) ? "y" : "n"); }) == "y";
}

std::string intake_talk::line(const std::string& id, const std::string& question,
                              const fault& wrong, const completion& begins) {
    return answered(
        id,
        [&](const std::string& kept) {
            return is_plain_line(kept) && (!wrong || wrong(kept).empty());
        },
        [&] { return ask_.line(question, wrong, begins); });
}

std::string intake_talk::pick(const std::string& id, const std::string& question,
                              const fault& wrong, const completion& begins,
                              const std::function<bool(const std::string&)>& at_once,
                              const std::function<std::string(const std::string&)>& meant) {
    return answered(
        id, [&](const std::string& kept) { return !kept.empty() && wrong(kept).empty(); },
        [&] { return meant(ask_.line(question, wrong, begins, at_once)); });
}

std::size_t intake_talk::choose(const std::string& id, const std::string& question,
                                const std::string& what, const std::vector<named_choice>& all,
                                const std::optional<std::size_t>& usual, bool list) {
    for (std::size_t i = 0; list && i < all.size(); ++i) {
        const std::string number = std::to_string(i + 1);
        say(std::string(number.size() < 2 ? "  " : " ") + number + "  " + all[i].name +
            (all[i].title.empty() ? "" : ": " + all[i].title));
    }
    const auto meant = [&](const std::string& text) {
        return text.empty() ? usual : chosen(all, text);
    };
    const std::string kept = pick(
        id, question,
        [&](const std::string& s) {
            return meant(s) ? std::string{} : choice_complaint(what, all, s);
        },
        [&](const std::string& s) { return beginning_so(all, s); },
        [&](const std::string& s) { return whole_number(all.size(), s); },
        [&](const std::string& s) { return all[*meant(s)].name; });
    return *chosen(all, kept);
}

}  // namespace pelage::cli
