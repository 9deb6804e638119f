// How far a long answer is, on standard error in a terminal: what is done, how fast, and what is left.
#pragma once

#include <chrono>
#include <cstdint>
#include <iostream>
#include <streambuf>
#include <string>

namespace pelage::cli {

/// Passes on what is written and counts its lines; tells them twice a second, in a line that it takes away again
/// at the end. Of `whole` lines it tells what is left; 0: nobody knows how many there are.
class told_lines : public std::streambuf {
  public:
    /// Borrows all of it.
    told_lines(std::ostream& to, std::ostream& err, std::uint64_t whole)
        : to_(to), err_(err), whole_(whole) {}
    told_lines(const told_lines&) = delete;
    told_lines& operator=(const told_lines&) = delete;
    ~told_lines() override;

  protected:
    int_type overflow(int_type c) override;
    std::streamsize xsputn(const char* text, std::streamsize n) override;
    int sync() override;

  private:
    void tell();

    std::ostream& to_;
    std::ostream& err_;
    std::uint64_t whole_;
    std::uint64_t lines_ = 0;
    bool told_ = false;
    std::chrono::steady_clock::time_point begun_ = std::chrono::steady_clock::now();
    std::chrono::steady_clock::time_point last_ = begun_;
};

/// Tells at most twice a second, from the first half second on, what it is given; takes the line away again at
/// the end.
class told_steps {
  public:
    /// Borrows it.
    explicit told_steps(std::ostream& err) : err_(err) {}
    told_steps(const told_steps&) = delete;
    told_steps& operator=(const told_steps&) = delete;
    ~told_steps();
    /// Tells "`what`, 3 s so far" if it is time to.
    void tell(const std::string& what);

  private:
    std::ostream& err_;
    bool told_ = false;
    std::chrono::steady_clock::time_point begun_ = std::chrono::steady_clock::now();
    std::chrono::steady_clock::time_point last_ = begun_;
};

/// "12000 lines, 9800 a second, 40 s left": `seconds` > 0.
[[nodiscard]] std::string progress_words(std::uint64_t lines, double seconds, std::uint64_t whole);

}  // namespace pelage::cli
