// From the words of options to values of the library, every fault collected.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/base/error.hpp>
#include <pelage/data/read.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/place_words.hpp>

#include "cli.hpp"
#include "options.hpp"

namespace pelage::cli {

/// Everything a verb works with.
struct workplace {
    const reference_data& reference;
    std::optional<salon_files> own{};  ///< read from a folder; none: the embedded, invented one
    std::vector<io::unsound_file> unsound{};  ///< of that folder, left out of `own`
    std::optional<kit> own_kit{};             ///< read from --kit
    std::vector<style>
        styles{};  ///< the salon's, then the reference's others, as in the season asked
    io::print_options print{};
    bool json = false;
    bool ics = false;
    bool html = false;
    bool csv = false;
    bool svg = false;

    /// A document in the format asked for, which is neither json nor ics.
    [[nodiscard]] std::string written(const io::document& d) const;

    [[nodiscard]] const salon_files& place() const { return own ? *own : io::demo_salon(); }
    /// Days without a visit: closed, or nobody works.
    [[nodiscard]] days_off closed() const {
        days_off all = place().closed;
        all.add(nobody_there(place().groomers));
        return all;
    }
    [[nodiscard]] const kit& tools() const { return own_kit ? *own_kit : place().tools; }
};

/// Faults of options, collected.
class faults {
  public:
    void say(errc code, const std::string& text) { all_.push_back({"pelage", 0, 0, code, text}); }
    /// All that was said, on one line; empty if nothing was.
    [[nodiscard]] std::string told() const {
        std::string out;
        for (const diagnostic& d : all_) {
            out += (out.empty() ? "" : "; ") + d.text;
        }
        return out;
    }
    [[nodiscard]] bool none() const { return all_.empty(); }
    /// Throws bad_input if anything was said.
    void throw_if_any() const {
        if (!all_.empty()) {
            throw bad_input(all_);
        }
    }

  private:
    diagnostics all_;
};

/// Reads the salon, the kit and how to print; sheets are as in `season`, or today's if that is empty.
/// Faults of options go into `f`; of files are thrown.
[[nodiscard]] workplace workplace_of(const common_options& o, const surroundings& around, faults& f,
                                     const std::string& season = {});

/// Says something beside the answer; changes no exit code.
void note(const surroundings& around, const std::string& text);
/// Reads a salon of which only some may be needed; notes what is left out of it.
[[nodiscard]] salon_files salon_at(const std::string& dir, const reference_data& c,
                                   const surroundings& around,
                                   std::vector<io::unsound_file>& unsound);
/// Throws the faults of the file that has that dog or sheet, if it is one that was left out.
void throw_if_unsound(const workplace& w, const std::string& id, bool dog);
/// The ids of the salon's dogs that can be asked about: no file that can't be read has one of them, too.
[[nodiscard]] std::vector<std::string> ids_to_ask(const workplace& w);

/// The sheet in the season asked, or in that of today if none is.
[[nodiscard]] style asked_season(const std::string& season, const style& s,
                                 const std::optional<date>& today);
/// Complains if --season names none of the sheet's.
void check_season(const std::string& season, const style& s, faults& f);

/// The day written in `--option`.
[[nodiscard]] std::optional<date> day_in(const std::string& option, const std::string& text,
                                         faults& f);
/// The places that `text` means; a fault of `option` if it means none, or is asked back.
[[nodiscard]] std::optional<selection> places_called(const std::string& option,
                                                     const std::string& text, const body& b,
                                                     faults& f);
/// The one zone called `text` in --zone of a patch.
[[nodiscard]] std::optional<place> zone_called(const std::string& text, const body& b, faults& f);
/// Which of `words` is written, by its place; none if nothing is, or if it is a fault of `option`.
[[nodiscard]] std::optional<std::size_t> choice_in(const std::string& option,
                                                   const std::string& text,
                                                   const std::vector<std::string>& words,
                                                   faults& f);
/// The direction in --direction: with or against.
[[nodiscard]] std::optional<direction> direction_called(const std::string& text, faults& f);
/// The coat called `text`.
[[nodiscard]] std::optional<coat_class> coat_called(const std::string& text, faults& f);
/// The length written in `--option`.
[[nodiscard]] std::optional<length> length_in(const std::string& option, const std::string& text,
                                              faults& f);
/// The chance written: 0.9, 90%, "9 in 10"; over 0 and below 1.
[[nodiscard]] std::optional<chance> chance_in(const std::string& text, faults& f);
/// A whole number from `least` to `most`; `example` says how it is written.
[[nodiscard]] std::optional<unsigned> whole_in(const std::string& option, const std::string& text,
                                               unsigned least, unsigned most,
                                               const std::string& example, faults& f);
/// Lays what --length says on the dog: in place of the sheet's own length, or of what the sheet says of the
/// places named. Where no style is said it is the reference's sheet of one length, and what the wishes leave
/// out of the zones that are `booked` (null: all) is asked back.
void apply_lengths(const std::string& text, const workplace& w, dog& d, const service* booked,
                   faults& f);

/// The dog asked about: from its file or the salon, with the options laid over it.
/// Days in it that don't count are noted. `service`: what it is booked for, as written; may be empty.
[[nodiscard]] dog dog_of(const dog_options& o, const workplace& w, const surroundings& around,
                         faults& f, const std::string& service = {});
/// The dog of a file or of the salon with its record, before any option is laid over it; a dog of which
/// nothing is known where none is asked about.
[[nodiscard]] dog recorded_dog(const dog_options& o, const workplace& w, const surroundings& around,
                               faults& f);
/// Puts what --coat, --size and --brush say in place of what the dog has; --coat may name breeds, whose coat
/// is then that of their mix.
void apply_options(const dog_options& o, const workplace& w, dog& d, faults& f);
/// A wait such as 6w, 42d or "6 weeks".
/// The service called so, by id, title or another word; null and a fault otherwise.
[[nodiscard]] const service* service_in(const std::string& option, const std::string& text,
                                        const reference_data& c, faults& f);
/// Where a style that no sheet is called is a service: what to write. Else empty.
[[nodiscard]] std::string service_meant(const std::string& sheet, const reference_data& c);
[[nodiscard]] std::optional<days> wait_in(const std::string& option, const std::string& text,
                                          faults& f);
/// Where nobody says the dog's coat: what its mix makes of it; the likeliest is set as its coat. A coat
/// that was seen stays. Throws bad_input where the mix can't be read.
[[nodiscard]] std::optional<expected_coat> coat_by_mix(dog& d, const workplace& w);
/// Puts what the intake found, as options say it, on the dog: a finding takes the place of the file's in
/// the same place, and has to fit what --now says (`hair_said`: whether it says anything).
void apply_intake(const intake_options& o, bool hair_said, const workplace& w, dog& d, faults& f);
/// An answer that could be a picture has none: why.
[[noreturn]] void throw_no_picture(const std::string& why);
/// The places and the length of "body 40 mm"; a fault of `option` if it isn't that.
[[nodiscard]] std::optional<hair_now> place_and_length(const std::string& option,
                                                       const std::string& text, const workplace& w,
                                                       faults& f);
/// A finding of --skin with the word for its places.
struct skin_told {
    std::string whom;
    skin_finding what;
};
[[nodiscard]] std::optional<skin_told> skin_in(const std::string& text, const workplace& w,
                                               faults& f);
/// The sheet of that dog.
[[nodiscard]] const style* sheet_of(const dog& d, const workplace& w, faults& f);

}  // namespace pelage::cli
