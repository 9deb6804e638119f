#include "options.hpp"

#include <algorithm>

#include <CLI/CLI.hpp>

namespace pelage::cli {

namespace {

/// Whether the option has one of these names, or stands under one of these headings.
bool is_among(const CLI::Option& o, option_names names) {
    return std::any_of(names.begin(), names.end(), [&](std::string_view n) {
        return o.get_group() == n || o.check_name(std::string(n));
    });
}

}  // namespace

text_option::text_option(CLI::App& app, const char* name, const char* what, const char* says,
                         const char* under, const char* unsaid)
    : std::string(unsaid) {
    app.add_option(name, static_cast<std::string&>(*this), says)->type_name(what)->group(under);
}

list_option::list_option(CLI::App& app, const char* name, const char* what, const char* says,
                         const char* under) {
    app.add_option(name, static_cast<std::vector<std::string>&>(*this), says)
        ->type_name(what)
        ->group(under)
        ->allow_extra_args(*name != '-');
}

flag_option::flag_option(CLI::App& app, const char* name, const char* says, const char* under) {
    app.add_flag(name, on, says)->group(under);
}

void excludes(CLI::App& app, const char* option, option_names others) {
    CLI::Option* const one = app.get_option(option);
    for (CLI::Option* o : app.get_options()) {
        if (o != one && is_among(*o, others)) {
            one->excludes(o);
        }
    }
}

void say_formats(CLI::App& app, const char* formats) {
    if (CLI::Option* o = app.get_option_no_throw("--format")) {
        o->description(formats);
    }
}

void needs(CLI::App& app, const char* option, const char* other) {
    app.get_option(option)->needs(app.get_option(other));
}

void drop(CLI::App& app, option_names names) {
    for (CLI::Option* o : app.get_options()) {
        if (is_among(*o, names)) {
            app.remove_option(o);
        }
    }
}

void keep_of_dog(CLI::App& app, option_names kept) {
    for (CLI::Option* o : app.get_options()) {
        if (is_among(*o, {heading::dog, heading::found, "dog", "--chance"}) &&
            !is_among(*o, kept)) {
            app.remove_option(o);
        }
    }
}

}  // namespace pelage::cli
