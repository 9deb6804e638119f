// plan --ask: the intake as a talk, which writes the dog's file, or changes in the file of a dog one knows what
// is new and nothing else. Questions go to standard error, so that the plan can go elsewhere. What was answered
// is kept beside the dog's file until that is written.
#include <algorithm>
#include <filesystem>
#include <ostream>

#include <pelage/base/phrase.hpp>
#include <pelage/data/embedded.hpp>
#include <pelage/data/write_dog.hpp>

#include "interview.hpp"
#include "part_file.hpp"
#include "plan_options.hpp"
#include "printable.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

namespace {

/// An id that no dog of the salon has: that of the name, of the file asked for, or one with a number.
std::string free_id(const std::string& output, const workplace& w, const dog& d) {
    std::vector<std::string> taken;
    if (w.own) {
        taken = ids(w.own->dogs);
    }
    for (const io::unsound_file& u : w.unsound) {
        taken.push_back(u.id);
        taken.push_back(std::filesystem::path(u.file).stem().string());
    }
    const auto free = [&](const std::string& id) {
        return std::find(taken.begin(), taken.end(), id) == taken.end();
    };
    const std::string file = std::filesystem::path(output).stem().string();
    const std::string of_file = file.empty() ? d.id : io::dog_id(file);
    if (free(d.id) || free(of_file)) {
        return free(d.id) ? d.id : of_file;
    }
    int n = 2;
    while (!free(d.id + "-" + std::to_string(n))) {
        ++n;
    }
    return d.id + "-" + std::to_string(n);
}

bool is_there(const std::string& path) {
    std::error_code failed;
    return std::filesystem::exists(std::filesystem::symlink_status(path, failed));
}

/// What a dog's file is called, or what is wrong with it.
std::string name_fault(const std::string& path) {
    return !path.ends_with(".toml") || path.size() <= 5 ? "a dog's file ends in .toml, as moss.toml"
           : is_there(path)                             ? "that is there already"
                                                        : "";
}

/// Refuses, before anything is asked, what can't take the dog's file in the end.
void check_output(const std::string& output) {
    if (output.empty()) {
        return;
    }
    if (is_there(output)) {
        cannot_write(output,
                     "it is there already, and holds what somebody wrote; remove it "
                     "first, or write another name behind -o");
    }
    if (const std::string wrong = name_fault(output); !wrong.empty()) {
        throw error(errc::usage, "--ask: " + wrong + "; found -o \"" + output + "\"");
    }
}

/// Where the file of an asked dog goes: as said, or its id; nothing is ever written over.
std::string free_path(asker& a, const std::string& output, const std::string& id) {
    std::string path = output.empty() ? id + ".toml" : output;
    if (is_there(path)) {
        a.say("\"" + path + "\" is there already, and stays as it is.");
        path = a.line("Another name for the file", name_fault);
    }
    return path;
}

/// As an operand that is taken for a file, not for an id.
std::string as_file(const std::string& path) {
    return path.find('/') == std::string::npos ? "./" + path : path;
}

/// How the intake is gone on with.
std::string again(const plan_options& o) {
    return "pelage plan" + (o.dog.dog.empty() ? "" : " " + as_word(o.dog.dog)) + " --ask" +
           (o.output.empty() ? "" : " -o " + as_word(o.output)) +
           (o.salon.empty() ? "" : " --salon " + as_word(o.salon));
}

/// The dog that is asked about, as its file has it.
struct dog_on_file {
    dog patient;    ///< without its record
    dog by_record;  ///< with it
    io::document_text text;
    bool embedded = false;  ///< of the demo salon: there is no file to change
};

io::document_text text_of_file(const dog& d, bool& embedded) {
    for (const io::embedded_file& f : io::embedded_reference()) {
        if (f.path.ends_with("demo/dogs/" + d.id + ".toml") &&
            (d.file.empty() || d.file == f.path)) {
            embedded = true;
            return {std::string(f.path), std::string(f.text)};
        }
    }
    return io::read_text(d.file);
}

dog_on_file dog_called(const plan_options& o, const workplace& w, const surroundings& around) {
    faults f;
    surroundings quiet = around;
    quiet.notes = nullptr;  // the plan that follows notes it
    dog_on_file out;
    out.by_record = recorded_dog(o.dog, w, quiet, f);
    f.throw_if_any();
    if (out.by_record.file.empty() && o.dog.dog.ends_with(".toml")) {
        out.by_record.file = o.dog.dog;
    }
    out.text = text_of_file(out.by_record, out.embedded);
    out.patient = io::read_dog_of_salon(out.text, w.reference, w.styles, w.tools());
    return out;
}

std::string weighed(const std::string& text, const intake_result& r) {
    return r.weighed ? io::with_weight(text, *r.weighed) : text;
}

/// Whether the text comes out as the dog that was described.
bool reads_as(const std::string& text, const dog& d, const workplace& w) {
    try {
        const dog read = io::read_dog_of_salon({"", text}, w.reference, w.styles, w.tools());
        return io::dog_file(read, w.reference.dog_body) == io::dog_file(d, w.reference.dog_body);
    } catch (const bad_input&) {
        return false;
    }
}

class intake {
  public:
    intake(const plan_options& o, const surroundings& around)
        : o_(checked(o)),
          around_(around),
          ask_(*around.in, *around.talk, around.one_key,
               around.terminal ? answers_as::keys : answers_as::lines),
          w_(workplace_read(o, around)) {
        if (!o.dog.dog.empty()) {
            on_file_ = dog_called(o, w_, around);
        }
        kept_ = kept_answers(answers_path(answers_beside()), on_file_ ? on_file_->patient.id : "",
                             w_.print.today);
    }

    /// The dog for the plan: its id, or the file that was written; nothing where it was broken off.
    std::optional<std::string> all() {
        if (!kept_.all.empty()) {
            say("Going on after " + counted() +
                (kept_.begun && kept_.begun != w_.print.today ? ", begun on " + iso(*kept_.begun)
                                                              : "") +
                ". To begin anew, remove " + kept_.file + ".");
        }
        intake_matter about{w_.reference, w_.styles, w_.print.today};
        if (on_file_) {
            about.on_file = &on_file_->patient;
            about.by_record = &on_file_->by_record;
            about.weighed = io::weight_in_file(on_file_->text.text);
        }
        try {
            interview(ask_, kept_, about,
                      [&](const intake_result& r) { on_file_ ? write_known(r) : write_new(r); });
        } catch (const break_off& b) {
            broken_off(b);
            return std::nullopt;
        }
        forget(kept_);
        return plan_of_;
    }

  private:
    static const plan_options& checked(const plan_options& o) {
        check_output(o.output);
        return o;
    }

    static workplace workplace_read(const plan_options& o, const surroundings& around) {
        faults f;
        workplace w = workplace_of(o, around, f, o.dog.season);
        f.throw_if_any();
        return w;
    }

    /// The file beside which answers are kept.
    [[nodiscard]] std::string answers_beside() const {
        if (on_file_ && !on_file_->embedded) {
            return on_file_->by_record.file;
        }
        return !o_.output.empty() ? std::string(o_.output)
               : on_file_         ? on_file_->patient.id + ".toml"
                                  : "new-dog.toml";
    }

    [[nodiscard]] std::string counted() const {
        return std::to_string(kept_.all.size()) + (kept_.all.size() == 1 ? " answer" : " answers");
    }

    void say(const std::string& text) { *around_.talk << printable(text) << "\n" << std::flush; }

    void broken_off(const break_off& b) {
        const std::string why =
            b.ended ? "The answers ended before the last question" : "Broken off";
        if (kept_.all.empty()) {
            forget(kept_);
            say(why + "; nothing was answered and nothing is written.");
            return;
        }
        say(why + "; the dog's file isn't written. " + counted() + " kept in " + kept_.file +
            "; go on with: " + again(o_));
    }

    void write_new(const intake_result& r) {
        dog d = r.patient;
        d.id = free_id(o_.output, w_, d);
        const std::string path = free_path(ask_, o_.output, d.id);
        write(path, weighed(io::dog_file(d, w_.reference.dog_body), r));
        plan_of_ = as_file(path);
        say("Wrote " + path + "; again with: pelage plan " + path);
    }

    /// In its own file only what is new, or all of it in another.
    void write_known(const intake_result& r) {
        const dog_on_file& before = *on_file_;
        const body& b = w_.reference.dog_body;
        const bool other = before.embedded || !o_.output.empty();
        const std::string path =
            other ? free_path(ask_, o_.output, before.patient.id) : before.by_record.file;
        dog after = r.patient;
        if (other && w_.own) {
            after.id = free_id(path, w_, after);
        }
        const std::string now = other ? before.text.text : io::read_text(path).text;
        const std::string text = weighed(io::updated_dog_file(now, before.patient, after, b), r);
        if (reads_as(text, after, w_)) {
            write(path, text);
            plan_of_ = other ? as_file(path) : std::string(o_.dog.dog);
            say(other         ? "Wrote " + path + "; " + before.text.name + " is as it was"
                : text == now ? path + " stays as it is: nothing is new"
                              : "Changed in " + path + " only what is new");
            return;
        }
        if (!other) {
            throw error(errc::conflict,
                        path +
                            " is written in a way that can't be changed line by line; it stays as "
                            "it is, and the answers are kept in " +
                            kept_.file + "; write them into a new file: " + again(o_) +
                            " -o NEW.toml");
        }
        write(path, weighed(io::dog_file(after, b), r));
        plan_of_ = as_file(path);
        say("Wrote " + path + " anew, since " + before.text.name +
            " can't be changed line by line: what it says of departures, measurements, days off "
            "and "
            "events is not in it");
    }

    static void write(const std::string& path, const std::string& text) {
        write_file(path, [&](std::ostream& file) { file << text; });
    }

    const plan_options& o_;
    const surroundings& around_;
    asker ask_;
    workplace w_;
    std::optional<dog_on_file> on_file_{};
    intake_answers kept_{};
    std::string plan_of_{};
};

}  // namespace

std::optional<std::string> ask_for_dog(const plan_options& o, const surroundings& around) {
    if (around.in == nullptr || around.talk == nullptr) {
        throw error(
            errc::usage,
            "--ask: nobody is there to answer; write the dog's file, or say what was found by "
            "options (pelage plan --help)");
    }
    return intake(o, around).all();
}

}  // namespace pelage::cli
