// The salon, and how its questions are asked of the rooms.
#include <algorithm>
#include <utility>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/mixed_coat.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/roster/roster.hpp>
#include <pelage/trade/upkeep.hpp>

#include "front/state.hpp"

namespace pelage {

namespace {

std::shared_ptr<const detail::salon_state> state_of(salon_files files) {
    const reference_data& c = io::reference();
    std::vector<style> sheets = files.styles;
    for (const style& s : c.styles) {
        if (find(sheets, s.id) == nullptr) {
            sheets.push_back(s);
        }
    }
    return std::make_shared<const detail::salon_state>(
        detail::salon_state{c, std::move(files), std::move(sheets)});
}

void check(const std::optional<double>& chance) {
    if (chance && !(*chance > 0.0 && *chance < 1.0)) {
        throw error(errc::range, "a chance must lie between 0 and 1; found " +
                                     std::to_string(*chance) + "; give it like 0.9");
    }
}

/// The sheet asked for, as it is on the day.
style sheet_for(const detail::salon_state& has, const std::string& id, const plan_options& o) {
    const std::string known = joined(ids(has.sheets), ", ");
    if (id.empty()) {
        throw error(errc::missing,
                    "no style is said; name a sheet in the options, one of " + known);
    }
    const style* s = find(has.sheets, id);
    if (s == nullptr) {
        throw error(errc::unknown, "no style sheet is called \"" + id + "\"" +
                                       did_you_mean(id, ids(has.sheets)) + "; there are " + known);
    }
    if (o.body_length && !s->adjustable) {
        throw error(errc::conflict, "the sheet \"" + id +
                                        "\" has no length to replace; name another sheet, such as "
                                        "one-length, or leave body_length out");
    }
    return on_day(*s, o.today);
}

std::vector<style> sheets_on(const detail::salon_state& has, const std::optional<date>& day) {
    std::vector<style> out;
    for (const style& s : has.sheets) {
        out.push_back(on_day(s, day));
    }
    return out;
}

void put_length(dog& d, const plan_options& o) {
    if (!o.body_length) {
        return;
    }
    const double v = in_mm(*o.body_length);
    if (!(v >= 0.01 && v <= 1000.0)) {
        throw error(errc::range,
                    "a length must be from 0.01 to 1000 mm; found " + std::to_string(v) + " mm");
    }
    d.body_length = o.body_length;
}

std::optional<expected_coat> coat_by_mix(dog& d, const reference_data& c) {
    if (d.coat) {
        return std::nullopt;
    }
    if (d.mix.empty()) {
        throw error(errc::missing,
                    "the dog's coat isn't said, and no breeds that it could be taken "
                    "from; found neither; set its coat or its mix");
    }
    expected_coat e = expect_coat(d.mix, c.genes, c.coats);
    d.coat = e.may_be.likeliest();
    return e;
}

std::shared_ptr<const detail::plan_state> planned(std::shared_ptr<const detail::salon_state> has,
                                                  dog d, const plan_options& o) {
    check(o.chance);
    style sheet = sheet_for(*has, o.sheet.empty() ? d.style : o.sheet, o);
    put_length(d, o);
    auto by_mix = coat_by_mix(d, has->reference);
    assume_upkeep(d, sheet);
    d = as_by_record(std::move(d), has->reference, has->files.rules, o.today);
    auto s = std::make_shared<detail::plan_state>(detail::plan_state{.home = std::move(has),
                                                                     .today = o.today,
                                                                     .asked = o.chance,
                                                                     .patient = std::move(d),
                                                                     .sheet = std::move(sheet),
                                                                     .by_mix = std::move(by_mix)});
    const plan_request r = s->request();
    s->made = make_plan(r);
    if (s->made.planned()) {
        s->when = s->by_mix ? back_of(r, s->made, s->by_mix->may_be.coats) : back_of(r, s->made);
    }
    return s;
}

}  // namespace

salon salon::open(const std::string& folder) {
    return salon(state_of(io::read_salon_folder(folder, io::reference())));
}

salon salon::embedded() {
    return salon(state_of(io::demo_salon()));
}

std::string salon::title() const {
    return has_->files.title;
}

bool salon::invented() const {
    return has_->files.invented;
}

std::vector<dog_card> salon::dogs() const {
    std::vector<dog_card> out;
    for (const pelage::dog& d : has_->files.dogs) {
        out.emplace_back(d);
    }
    return out;
}

dog_card salon::dog(std::string_view id) const {
    const auto& all = has_->files.dogs;
    if (const pelage::dog* d = find(all, id)) {
        return dog_card(*d);
    }
    throw error(errc::unknown, "no dog of the salon is called \"" + std::string(id) + "\"" +
                                   did_you_mean(id, ids(all)) + "; there are " +
                                   joined(ids(all), ", "));
}

dog_card salon::read_dog(const std::string& toml, const std::string& name) const {
    return dog_card(io::read_dog({name, toml}, has_->reference, has_->sheets));
}

std::vector<sheet_card> salon::sheets() const {
    std::vector<sheet_card> out;
    for (const style& s : has_->sheets) {
        out.push_back(detail::card_of(s));
    }
    return out;
}

pelage::plan salon::plan(const dog_card& d, const plan_options& o) const {
    return pelage::plan(planned(has_, d.all(), o));
}

return_day salon::return_date(const dog_card& d, const plan_options& o) const {
    return plan(d, o).return_date();
}

visit_calendar salon::calendar(const dog_card& d, const date& today, int weeks,
                               const plan_options& o) const {
    if (weeks < 4 || weeks > 52) {
        throw error(errc::range, "a calendar is of 4 to 52 weeks; found " + std::to_string(weeks));
    }
    plan_options on_the_day = o;
    on_the_day.today = today;
    auto of = planned(has_, d.all(), on_the_day);
    (void)pelage::plan(of).return_date();  // throws where there is none
    auto s = std::make_shared<detail::calendar_state>(detail::calendar_state{
        .of = std::move(of), .today = today, .weeks = weeks, .sheets = sheets_on(*has_, today)});
    s->made = detail::with_request(
        *s, [&](const calendar_request& r) { return calendar_of(r, s->of->made); });
    return visit_calendar(std::move(s));
}

roster_count salon::roster(std::istream& in, std::ostream& out, const roster_options& o) const {
    check(o.chance);
    if (o.jobs < 1 || o.jobs > 256) {
        throw error(errc::range,
                    "a roster takes 1 to 256 threads; found " + std::to_string(o.jobs));
    }
    const std::vector<style> sheets = sheets_on(*has_, o.today);
    return io::plan_roster(in, out,
                           {.reference = has_->reference,
                            .rules = has_->files.rules,
                            .tools = has_->files.tools,
                            .styles = sheets,
                            .today = o.today,
                            .asked = o.chance,
                            .jobs = o.jobs});
}

tool_lookup salon::lookup(const std::string& text, std::optional<coat_class> coat,
                          std::optional<date> today) const {
    auto s = std::make_shared<detail::lookup_state>(
        detail::lookup_state{.home = has_, .text = text, .coat = coat, .today = today});
    s->made = look_up(s->request());
    return tool_lookup(std::move(s));
}

kit_ladder salon::ladder(coat_class coat, std::optional<date> today) const {
    auto s = std::make_shared<detail::ladder_state>(
        detail::ladder_state{{.home = has_, .text = {}, .coat = coat, .today = today}});
    s->made = whole_ladder(s->asked.request());
    return kit_ladder(std::move(s));
}

kit_report salon::check_kit(std::optional<date> today) const {
    auto s = std::make_shared<detail::kit_state>(detail::kit_state{.home = has_, .today = today});
    s->made = pelage::check_kit(s->request());
    return kit_report(std::move(s));
}

}  // namespace pelage
