// What strangers write on a command line or answer to questions.
#include <sstream>

#include <pelage/base/length_text.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/data/write_dog.hpp>
#include <pelage/kit/asked.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/trade/days_off.hpp>
#include <pelage/trade/place_words.hpp>

#include "fuzz/targets.hpp"
#include "interview.hpp"

using namespace pelage;

namespace fuzz {

void intake(const std::string& text) {
    const reference_data& c = io::reference();
    std::istringstream in(text);
    std::ostringstream out;
    cli::asker asks(in, out);
    cli::intake_answers kept;
    try {
        cli::interview(asks, kept, {c, c.styles, parse_date("2026-11-26")},
                       [&](const cli::intake_result& r) noexcept {
                           (void)io::read_dog({"again.toml", io::dog_file(r.patient, c.dog_body)},
                                              c, c.styles);
                       });
    } catch (const cli::break_off&) {
    }
}

void words(const std::string& text) {
    const reference_data& c = io::reference();
    (void)parse_length(text);
    (void)parse_brushing(text);
    (void)parse_days_off(text);
    (void)parse_wait(text);
    (void)parse_date(text);
    (void)select(c.dog_body, text);
    try {
        (void)expect_coat(text, c.genes, c.coats);
    } catch (const bad_input&) {
    }
    for (const bool barber : {false, true}) {
        const lookup_request r{
            c,  c.rules, io::demo_salon().tools, text, asked_kind::any, barber, {}, {},
            {}, {},      &io::trade_words()};
        try {
            (void)read_asked(r);
            (void)look_up(r);
        } catch (const error& e) {
            if (e.code() == errc::internal) {
                throw;
            }
        }
    }
}

}  // namespace fuzz
