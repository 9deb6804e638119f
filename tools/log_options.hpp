// The options of `log`.
#pragma once

#include "command.hpp"
#include "options.hpp"

namespace pelage::cli {

struct log_options : common_options {
    explicit log_options(CLI::App& a);

    struct dog_of_plan : dog_options {
        explicit dog_of_plan(CLI::App& a);
    };
    dog_of_plan dog{app};
    text_option date{app, "--date", "DATE", "the day of the visit; else today", heading::done};
    list_option services{app, "--service", "SERVICE",
                         "full, tidy, bath, de-shed, prep, nails, ...; repeat", heading::done};
    text_option who{app, "--who", "NAME", "who groomed; else the salon's groomer", heading::done};
    list_option left{app, "--left", "'PLACE LENGTH'", "really left, where not as planned; repeat",
                     heading::done};
    list_option used{app, "--used", "'TOOL: PLACES'",
                     "where another than planned: 'blade 7F: body'", heading::done};
    text_option minutes{app, "--minutes", "N", "really taken, from 1 to 1440", heading::done};
    text_option price{app, "--price", "AMOUNT", "as in 60 or '60 EUR'", heading::done};
    text_option remarks{app, "--note", "TEXT", "what the next one should know", heading::done};
    text_option next{app, "--next", "DATE", "the day promised for the next visit", heading::done};
    list_option mats{app, "--mats", "WHERE", "none, or as in 'ears, left armpit pelt'; repeat",
                     heading::found};
    list_option measured{app, "--measured", "'PLACE LENGTH'",
                         "before the cut, combed out and dry; repeat", heading::found};
    text_option behaviour{app, "--behaviour", "TEXT", "how it was on the table", heading::found};
    flag_option yes{app, "--yes", "ask nothing: what isn't said went as planned"};
    flag_option sure{app, "--sure", "it is so, though kit or coat speak against it"};
    text_option correct{app, "--correct", "N", "it stands in place of entry N"};
    flag_option undo{app, "--undo", "take the last entry back"};
    flag_option show{app, "--show", "the last entries"};
    flag_option against_sheet{app, "--against-sheet",
                              "what was left against the sheet, by whom and where"};
    text_option audit{app, "--check", "DIR", "are the records of that salon sound"};
    text_option exported{app, "--export", "FORMAT", "csv or json: of DOG, or of the whole salon"};
};

}  // namespace pelage::cli
