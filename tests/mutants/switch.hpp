// Included before everything else in the copy that tests/mutants/run builds: each change it made to the sources is
// off until the environment's PELAGE_MUTANT names it. What was passed by is written to PELAGE_REACHED at the end.
#pragma once

#if __cplusplus >= 202002L  // what tries the compiler alone is older

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <initializer_list>
#include <type_traits>
#include <utility>

namespace mutant {

inline constexpr int most = 20000;

/// What was passed by in this process: 1 as it could be changed, 2 where the types don't allow it.
struct switches {
    int active = -1;
    unsigned char passed[most] = {};
    switches() {
        if (const char* id = std::getenv("PELAGE_MUTANT")) {
            active = std::atoi(id);
        }
    }
    switches(const switches&) = delete;
    switches& operator=(const switches&) = delete;
    ~switches() {
        const char* path = std::getenv("PELAGE_REACHED");
        std::FILE* f = path == nullptr ? nullptr : std::fopen(path, "ab");
        if (f != nullptr) {
            for (int i = 0; i < most; ++i) {
                if (passed[i] == 1) {
                    std::fprintf(f, "%d\n", i);
                }
            }
            std::fclose(f);
        }
    }
};

inline switches& all() {
    static switches s;
    return s;
}

constexpr bool on(int id) {
    if (std::is_constant_evaluated()) {
        return false;
    }
    switches& s = all();
    s.passed[id] = 1;
    return s.active == id;
}

template <class T>
constexpr T lit(int id, T value) {
    return on(id) ? static_cast<T>(value + 1) : value;
}

template <class T>
constexpr T minus_if(int id, T value) {
    if constexpr (requires { static_cast<T>(-value); }) {
        return on(id) ? static_cast<T>(-value) : value;
    } else {
        return value;
    }
}

/// One infix operator: `a < mutant::lt(17, 18) > b`. The second id is of the second change, -1 for none.
#define PELAGE_INFIX(name, left, right, is, first, second)                                   \
    struct name##_tag {                                                                      \
        int one, two;                                                                        \
    };                                                                                       \
    constexpr name##_tag name(int one, int two = -1) {                                       \
        return {one, two};                                                                   \
    }                                                                                        \
    template <class L>                                                                       \
    struct name##_half {                                                                     \
        L&& l;                                                                               \
        name##_tag t;                                                                        \
    };                                                                                       \
    template <class L>                                                                       \
    constexpr name##_half<L> operator left(L&& l, name##_tag t) {                            \
        return {std::forward<L>(l), t};                                                      \
    }                                                                                        \
    template <class L, class R>                                                              \
    constexpr auto operator right(name##_half<L>&& h, R&& r) {                               \
        using result = std::decay_t<decltype(std::declval<L>() is std::declval<R>())>;       \
        if constexpr (requires {                                                             \
                          { std::declval<L>() first std::declval<R>() } -> same_as<result>;  \
                      }) {                                                                   \
            if (on(h.t.one)) {                                                               \
                return static_cast<result>(std::forward<L>(h.l) first std::forward<R>(r));   \
            }                                                                                \
        }                                                                                    \
        if constexpr (requires {                                                             \
                          { std::declval<L>() second std::declval<R>() } -> same_as<result>; \
                      }) {                                                                   \
            if (h.t.two >= 0 && on(h.t.two)) {                                               \
                return static_cast<result>(std::forward<L>(h.l) second std::forward<R>(r));  \
            }                                                                                \
        }                                                                                    \
        return static_cast<result>(std::forward<L>(h.l) is std::forward<R>(r));              \
    }

template <class A, class B>
concept same_as = std::is_same_v<std::decay_t<A>, B>;

PELAGE_INFIX(lt, <, >, <, <=, >)
PELAGE_INFIX(le, <=, <=, <=, <, >)
PELAGE_INFIX(gt, >, <, >, >=, <)
PELAGE_INFIX(ge, >=, >=, >=, >, <)
PELAGE_INFIX(eq, ==, ==, ==, !=, !=)
PELAGE_INFIX(ne, !=, !=, !=, ==, ==)
PELAGE_INFIX(add, +, +, +, -, -)
PELAGE_INFIX(sub, -, -, -, +, +)
PELAGE_INFIX(mul, *, *, *, /, /)

}  // namespace mutant

#endif
