// Check vectors of any bytes: the reader, and what the cases of a sound file ask of the library.
#include <sstream>

#include <pelage/base/error.hpp>

#include "fuzz/targets.hpp"
#include "vectors/chk.hpp"
#include "vectors/quantities.hpp"

namespace fuzz {

void vectors(const std::string& text) {
    std::istringstream in(text);
    const chk::vectors read = chk::read(in);
    if (!read.faults.empty()) {
        return;
    }
    for (const chk::check_case& c : read.cases) {
        const auto q = chk::quantities().find(c.quantity);
        if (q == chk::quantities().end()) {
            continue;
        }
        try {
            chk::givens given(c);
            (void)q->second(given);
        } catch (const chk::bad_case&) {
        } catch (const pelage::error& e) {
            if (e.code() == pelage::errc::internal) {
                throw;
            }
        }
    }
}

}  // namespace fuzz
