// Figures and how they are known.
#include <algorithm>

#include <fmt/format.h>

#include "data/read/parts.hpp"

namespace pelage::io {

namespace {

std::string get_source(record& r, page& p) {
    const member* m = r.get("source");
    if (m == nullptr) {
        return {};
    }
    const auto id = text_at(m->value, "source", text_kind::line, p.out);
    if (!id || find(p.known.sources, *id) != nullptr) {
        return id.value_or("");
    }
    p.out.add_unknown(m->value.at, "unknown source", *id, ids(p.known.sources));
    return {};
}

/// A published figure names its source; what is worked out says from what.
void check_evidence(record& r, page& p, const evidence& e, bool has_source) {
    if (e.how == basis::published && !has_source) {
        p.out.add(r.at("basis"), errc::missing,
                  "a published figure needs its source; found none; write source = \"...\" with an "
                  "id of reference/sources.toml");
    }
    if (e.how == basis::derived && e.from.empty() && e.note.empty() && !has_source) {
        p.out.add(r.at("basis"), errc::missing,
                  "a figure that was worked out says from what; found neither note nor source; "
                  "write note = \"...\"");
    }
}

}  // namespace

evidence get_evidence(record& r, page& p, presence basis_there, const evidence& otherwise) {
    const auto how = r.get_name<basis>("basis", basis_there, basis_names);
    evidence e{how.value_or(otherwise.how), get_source(r, p), r.get_flag("relayed"),
               r.get_text("note", presence::may, text_kind::prose)};
    if (how) {
        check_evidence(r, p, e, r.get("source") != nullptr);
    } else if (e.from.empty()) {
        e.from = otherwise.from;
        e.relayed = e.relayed || otherwise.relayed;
    }
    if (e.how == basis::derived && e.from.empty()) {
        e.from = std::exchange(e.note, {});
    }
    if (e.note.empty()) {
        e.note = otherwise.note;
    }
    return e;
}

evidence get_basis(record& r, page& p, std::string_view key) {
    const member* m = r.get(key, presence::must, "\"practice\"");
    if (m == nullptr) {
        return {};
    }
    if (m->value.kind == node_kind::table) {
        record own(m->value, p.out);
        evidence e = get_evidence(own, p, presence::must);
        own.done();
        return e;
    }
    const auto text = text_at(m->value, key, text_kind::line, p.out);
    if (!text) {
        return {};
    }
    const int i = index_of({*text, m->value.at}, "basis", basis_names, p.out);
    if (i == static_cast<int>(basis::published) || i == static_cast<int>(basis::derived)) {
        p.out.add(
            m->value.at, errc::missing,
            fmt::format("this basis needs its source or note; found {}; write {} = {{ basis = "
                        "\"{}\", source = \"...\" }}",
                        shown(*text), key, *text));
    }
    return {i < 0 ? basis::assumption : static_cast<basis>(i), {}, false, {}};
}

std::optional<raw_figure> get_spread(record& r, measure m, const bounds& b) {
    const auto best = r.get_number("best", presence::must, m, b);
    const auto low = r.get_number("low", presence::may, m, b);
    const auto high = r.get_number("high", presence::may, m, b);
    if (!best) {
        return std::nullopt;
    }
    raw_figure f{low.value_or(*best), *best, high.value_or(*best), {}};
    if (f.low > f.best || f.best > f.high) {
        r.out().add(
            r.at("best"), errc::conflict,
            fmt::format("a figure lies between its low and its high; found low {}, best {}, "
                        "high {}; write them in rising order",
                        with_unit(f.low, m), with_unit(f.best, m), with_unit(f.high, m)));
        return std::nullopt;
    }
    return f;
}

std::optional<raw_figure> figures::plain(const member& at, measure m, const bounds& b) {
    if (inherited_ == nullptr) {
        page_.out.add(at.value.at, errc::missing,
                      fmt::format("a figure needs its basis; found {}; write {} = {{ best = {}, "
                                  "basis = \"practice\" }}",
                                  found(at.value), at.key, found(at.value)));
        return std::nullopt;
    }
    const auto v = number_at(at.value, at.key, m, b, page_.out);
    return v ? std::optional{raw_figure{*v, *v, *v, *inherited_}} : std::nullopt;
}

std::optional<raw_figure> figures::get(std::string_view key, presence p, measure m,
                                       const bounds& b) {
    const member* at = record_.get(key, p, "{ best = ..., basis = \"...\" }");
    if (at == nullptr) {
        return std::nullopt;
    }
    std::optional<raw_figure> f;
    if (at->value.kind != node_kind::table) {
        f = plain(*at, m, b);
    } else {
        record own(at->value, page_.out);
        f = get_spread(own, m, b);
        const evidence why = inherited_ == nullptr
                                 ? get_evidence(own, page_, presence::must)
                                 : get_evidence(own, page_, presence::may, *inherited_);
        own.done();
        if (f) {
            f->why = why;
        }
    }
    if (f) {
        list_figure(page_, prefix_ + "/" + std::string(key), *f, m);
    }
    return f;
}

void list_figure(page& p, std::string key, const raw_figure& f, measure m) {
    if (p.listed == nullptr) {
        return;
    }
    std::string value = with_unit(f.best, m);
    if (f.low < f.high) {
        value += fmt::format(" ({} to {})", f.low, f.high);
    }
    list_text(p, std::move(key), std::move(value), f.why);
}

void list_text(page& p, std::string key, std::string value, const evidence& why) {
    if (p.listed != nullptr) {
        p.listed->push_back({std::move(key), std::move(value), why});
    }
}

void unique_ids::add(const std::string& id, const spot& at, std::string_view what, faults& out) {
    if (id.empty()) {
        return;  // already complained of
    }
    const auto [before, is_new] = lines_.emplace(id, at.line);
    if (!is_new) {
        out.add(at, errc::duplicate,
                fmt::format("the same {} twice; found {}, first in line {}; name it once", what,
                            shown(id), before->second));
    }
}

}  // namespace pelage::io
