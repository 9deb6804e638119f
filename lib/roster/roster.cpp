// The threads of a roster. Each takes some lines from the input, answers them, and hands the answer
// to whoever is at the door: answers leave in the order in which lines came. No thread runs more than
// a few turns ahead of the slowest, so that what is held stays small.
#include <algorithm>
#include <condition_variable>
#include <exception>
#include <istream>
#include <limits>
#include <map>
#include <mutex>
#include <ostream>
#include <string>
#include <system_error>
#include <thread>
#include <utility>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/roster/roster.hpp>

#include "roster/line.hpp"

namespace pelage::io {

namespace {

/// Some lines in a row.
struct batch {
    struct piece {
        std::size_t begin = 0;
        std::size_t size = 0;
        bool too_long = false;
    };
    std::uint64_t turn = 0;   ///< of all batches
    std::uint64_t first = 0;  ///< number of its first line
    std::string text;
    std::vector<piece> lines;
};

/// Cuts the input into batches.
class line_source {
  public:
    /// Lines before `from` are passed over.
    line_source(std::istream& in, std::uint64_t from)
        : in_(in), tied_(in.tie(nullptr)), buffer_(longest_line + 2), from_(from) {}
    line_source(const line_source&) = delete;
    line_source& operator=(const line_source&) = delete;
    ~line_source() { in_.tie(tied_); }

    /// Fills `b` with the next lines; false at the end.
    bool next(batch& b) {
        constexpr std::size_t most_lines = 16;  // what waits for its turn to be written stays small
        constexpr std::size_t most_bytes = 256'000;
        b.text.clear();
        b.lines.clear();
        while (lines_ + 1 < from_ && in_.good()) {
            in_.ignore(std::numeric_limits<std::streamsize>::max(), '\n');
            ++lines_;
        }
        b.first = lines_ + 1;
        while (b.lines.size() < most_lines && b.text.size() < most_bytes && one(b)) {
            ++lines_;
            // who writes a line and waits for its answer gets it
            if (in_.rdbuf()->in_avail() <= 0) {
                break;
            }
        }
        b.turn = turns_++;
        return !b.lines.empty();
    }

  private:
    bool one(batch& b) {
        if (!in_.good()) {
            return false;
        }
        in_.getline(buffer_.data(), static_cast<std::streamsize>(buffer_.size()));
        auto size = static_cast<std::size_t>(in_.gcount());
        if (in_.bad() || (in_.eof() && size == 0)) {
            return false;
        }
        const bool cut = in_.fail();  // no end of the line within the buffer
        if (cut) {
            in_.clear();
            in_.ignore(std::numeric_limits<std::streamsize>::max(), '\n');
            size = 0;
        } else if (!in_.eof()) {
            --size;  // the line's end is counted but not kept
        }
        std::string_view line{buffer_.data(), size};
        constexpr std::string_view mark = "\xEF\xBB\xBF";
        if (lines_ == 0 && line.starts_with(mark)) {
            line.remove_prefix(mark.size());
        }
        b.lines.push_back({b.text.size(), line.size(), cut || line.size() > longest_line});
        b.text += line;
        return true;
    }

    std::istream& in_;
    std::ostream* tied_;  ///< let go: a read would flush what another thread is writing
    std::vector<char> buffer_;
    std::uint64_t from_;
    std::uint64_t lines_ = 0;
    std::uint64_t turns_ = 0;
};

class roster {
  public:
    roster(std::istream& in, std::ostream& out, const roster_request& r)
        : in_(in), source_(in, r.from), out_(out), request_(r), ready_(r) {}

    roster_count run() {
        {
            std::vector<std::jthread> others;
            try {
                for (unsigned i = 1; i < std::min(request_.jobs, 256U); ++i) {
                    others.emplace_back([this] { work(); });
                }
            } catch (const std::system_error&) {  // as many as the machine has room for are enough
            }
            work();
        }
        if (broken_) {
            std::rethrow_exception(broken_);
        }
        if (in_.bad()) {
            throw error(errc::io, "can't read the roster to its end");
        }
        return count_;
    }

  private:
    void work() noexcept {
        try {
            line_planner planner(request_, ready_);
            batch b;
            while (take(b)) {
                std::string text;
                roster_count n;
                for (std::size_t i = 0; i < b.lines.size(); ++i) {
                    const batch::piece& p = b.lines[i];
                    if (p.too_long) {
                        line_planner::answer_too_long(b.first + i, text, n);
                    } else {
                        planner.answer(std::string_view(b.text).substr(p.begin, p.size),
                                       b.first + i, text, n);
                    }
                }
                hand_in(b.turn, std::move(text), n);
            }
        } catch (...) {
            give_up(std::current_exception());
        }
    }

    bool take(batch& b) {
        const std::scoped_lock reading(reading_);
        {
            const std::scoped_lock lock(door_);
            if (broken_) {
                return false;
            }
        }
        return source_.next(b);
    }

    void hand_in(std::uint64_t turn, std::string text, const roster_count& n) {
        std::unique_lock lock(door_);
        const std::uint64_t ahead = std::uint64_t{4} * request_.jobs;
        moved_.wait(lock, [&] { return turn < next_ + ahead || broken_; });
        count_.lines += n.lines;
        count_.refused += n.refused;
        count_.faulty += n.faulty;
        count_.failed += n.failed;
        waiting_.emplace(turn, std::move(text));
        if (writing_) {
            return;  // whoever is writing takes it along
        }
        writing_ = true;
        while (!broken_ && !waiting_.empty() && waiting_.begin()->first == next_) {
            const std::string now = std::move(waiting_.begin()->second);
            waiting_.erase(waiting_.begin());
            lock.unlock();
            out_ << now << std::flush;
            const bool written = out_.good();
            lock.lock();
            ++next_;
            if (!written) {
                broken_ = std::make_exception_ptr(error(errc::io, "cannot write the answer"));
            }
            moved_.notify_all();
        }
        writing_ = false;
    }

    void give_up(const std::exception_ptr& why) {
        const std::scoped_lock lock(door_);
        broken_ = broken_ ? broken_ : why;
        moved_.notify_all();
    }

    std::mutex reading_;
    std::istream& in_;
    line_source source_;

    std::mutex door_;  ///< of all below but the request
    std::condition_variable moved_;
    std::ostream& out_;
    std::map<std::uint64_t, std::string> waiting_;
    std::uint64_t next_ = 0;  ///< whose turn it is to be written
    bool writing_ = false;
    roster_count count_;
    std::exception_ptr broken_;

    const roster_request& request_;
    const prepared ready_;
};

}  // namespace

roster_count plan_roster(std::istream& in, std::ostream& out, const roster_request& r) {
    return roster(in, out, r).run();
}

}  // namespace pelage::io
