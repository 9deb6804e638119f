// The scale of lengths, by the CIE's own measure of how different two colours look (CIEDE2000), and as it is
// seen without one kind of cone. Nothing of it is the library's: it holds colours as text.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include <pelage/data/outline.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

using triple = std::array<double, 3>;
using matrix = std::array<triple, 3>;

triple times(const matrix& m, const triple& v) {
    triple out{};
    for (std::size_t i = 0; i < 3; ++i) {
        out[i] = m[i][0] * v[0] + m[i][1] * v[1] + m[i][2] * v[2];
    }
    return out;
}

/// sRGB as written to light (IEC 61966-2-1).
triple light_of(const std::string& colour) {
    triple out{};
    for (std::size_t i = 0; i < 3; ++i) {
        const double c = std::stoi(colour.substr(1 + 2 * i, 2), nullptr, 16) / 255.0;
        out[i] = c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
    }
    return out;
}

/// CIELAB under D65.
triple lab_of(const triple& light) {
    constexpr matrix to_xyz{{{0.4124564, 0.3575761, 0.1804375},
                             {0.2126729, 0.7151522, 0.0721750},
                             {0.0193339, 0.1191920, 0.9503041}}};
    const triple white = times(to_xyz, {1.0, 1.0, 1.0});
    triple f = times(to_xyz, light);
    for (std::size_t i = 0; i < 3; ++i) {
        const double t = f[i] / white[i];
        f[i] = t > 216.0 / 24389.0 ? std::cbrt(t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
    }
    return {116.0 * f[1] - 16.0, 500.0 * (f[0] - f[1]), 200.0 * (f[1] - f[2])};
}

double degrees(double b, double a) {
    const double h = a == 0.0 && b == 0.0 ? 0.0 : std::atan2(b, a) * 180.0 / std::numbers::pi;
    return h < 0.0 ? h + 360.0 : h;
}

double seventh_root_term(double chroma) {
    const double c7 = std::pow(chroma, 7.0);
    return std::sqrt(c7 / (c7 + std::pow(25.0, 7.0)));
}

/// Sharma, Wu & Dalal, "The CIEDE2000 color-difference formula: implementation notes, supplementary test
/// data, and mathematical observations", Color Res. Appl. 30 (2005), equations 2 to 22.
double ciede2000(const triple& one, const triple& other) {
    constexpr double rad = std::numbers::pi / 180.0;
    const double g =
        0.5 * (1.0 - seventh_root_term(
                         (std::hypot(one[1], one[2]) + std::hypot(other[1], other[2])) / 2.0));
    const double a1 = one[1] * (1.0 + g);
    const double a2 = other[1] * (1.0 + g);
    const double c1 = std::hypot(a1, one[2]);
    const double c2 = std::hypot(a2, other[2]);
    const double h1 = degrees(one[2], a1);
    const double h2 = degrees(other[2], a2);
    const bool grey = c1 * c2 == 0.0;
    double dh = grey ? 0.0 : h2 - h1;
    dh += dh > 180.0 ? -360.0 : dh < -180.0 ? 360.0 : 0.0;
    const double dl = other[0] - one[0];
    const double dc = c2 - c1;
    const double big_dh = 2.0 * std::sqrt(c1 * c2) * std::sin(dh / 2.0 * rad);
    const double l = (one[0] + other[0]) / 2.0;
    const double c = (c1 + c2) / 2.0;
    const double sum = h1 + h2;
    const double h = grey                         ? sum
                     : std::abs(h1 - h2) <= 180.0 ? sum / 2.0
                     : sum < 360.0                ? (sum + 360.0) / 2.0
                                                  : (sum - 360.0) / 2.0;
    const double t = 1.0 - 0.17 * std::cos((h - 30.0) * rad) + 0.24 * std::cos(2.0 * h * rad) +
                     0.32 * std::cos((3.0 * h + 6.0) * rad) -
                     0.20 * std::cos((4.0 * h - 63.0) * rad);
    const double theta = 30.0 * std::exp(-std::pow((h - 275.0) / 25.0, 2.0));
    const double rc = 2.0 * seventh_root_term(c);
    const double off = (l - 50.0) * (l - 50.0);
    const double sl = 1.0 + 0.015 * off / std::sqrt(20.0 + off);
    const double sc = 1.0 + 0.045 * c;
    const double sh = 1.0 + 0.015 * c * t;
    const double rt = -std::sin(2.0 * theta * rad) * rc;
    return std::sqrt(std::pow(dl / sl, 2.0) + std::pow(dc / sc, 2.0) + std::pow(big_dh / sh, 2.0) +
                     rt * (dc / sc) * (big_dh / sh));
}

/// What is left of light without one kind of cone: Machado, Oliveira & Fernandes, "A physiologically-based
/// model for simulation of color vision deficiency", IEEE TVCG 15 (2009), severity 1.0.
struct reader {
    const char* sees;
    matrix m;
};
constexpr std::array<reader, 4> readers{{{"all", {{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}},
                                         {"protanopia",
                                          {{{0.152286, 1.052583, -0.204868},
                                            {0.114503, 0.786281, 0.099216},
                                            {-0.003882, -0.048116, 1.051998}}}},
                                         {"deuteranopia",
                                          {{{0.367322, 0.860646, -0.227968},
                                            {0.280085, 0.672501, 0.047413},
                                            {-0.011820, 0.042940, 0.968881}}}},
                                         {"tritanopia",
                                          {{{1.255528, -0.076749, -0.178779},
                                            {-0.078411, 0.930809, 0.147602},
                                            {0.004733, 0.691367, 0.303900}}}}}};

triple seen_by(const reader& r, const triple& light) {
    triple out = times(r.m, light);
    for (double& c : out) {
        c = std::clamp(c, 0.0, 1.0);
    }
    return out;
}

/// WCAG 2: relative luminance and contrast.
double luminance(const triple& light) {
    return 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2];
}
double contrast(const triple& a, const triple& b) {
    const double la = luminance(a) + 0.05;
    const double lb = luminance(b) + 0.05;
    return std::max(la, lb) / std::min(la, lb);
}

/// Pairs 1 to 34 of table 1 of that paper.
struct published {
    triple one;
    triple other;
    double apart;
};
const std::vector<published> table_1{
    {{50.0000, 2.6772, -79.7751}, {50.0000, 0.0000, -82.7485}, 2.0425},
    {{50.0000, 3.1571, -77.2803}, {50.0000, 0.0000, -82.7485}, 2.8615},
    {{50.0000, 2.8361, -74.0200}, {50.0000, 0.0000, -82.7485}, 3.4412},
    {{50.0000, -1.3802, -84.2814}, {50.0000, 0.0000, -82.7485}, 1.0000},
    {{50.0000, -1.1848, -84.8006}, {50.0000, 0.0000, -82.7485}, 1.0000},
    {{50.0000, -0.9009, -85.5211}, {50.0000, 0.0000, -82.7485}, 1.0000},
    {{50.0000, 0.0000, 0.0000}, {50.0000, -1.0000, 2.0000}, 2.3669},
    {{50.0000, -1.0000, 2.0000}, {50.0000, 0.0000, 0.0000}, 2.3669},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0009}, 7.1792},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0010}, 7.1792},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0011}, 7.2195},
    {{50.0000, 2.4900, -0.0010}, {50.0000, -2.4900, 0.0012}, 7.2195},
    {{50.0000, -0.0010, 2.4900}, {50.0000, 0.0009, -2.4900}, 4.8045},
    {{50.0000, -0.0010, 2.4900}, {50.0000, 0.0010, -2.4900}, 4.8045},
    {{50.0000, -0.0010, 2.4900}, {50.0000, 0.0011, -2.4900}, 4.7461},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 0.0000, -2.5000}, 4.3065},
    {{50.0000, 2.5000, 0.0000}, {73.0000, 25.0000, -18.0000}, 27.1492},
    {{50.0000, 2.5000, 0.0000}, {61.0000, -5.0000, 29.0000}, 22.8977},
    {{50.0000, 2.5000, 0.0000}, {56.0000, -27.0000, -3.0000}, 31.9030},
    {{50.0000, 2.5000, 0.0000}, {58.0000, 24.0000, 15.0000}, 19.4535},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 3.1736, 0.5854}, 1.0000},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 3.2972, 0.0000}, 1.0000},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 1.8634, 0.5757}, 1.0000},
    {{50.0000, 2.5000, 0.0000}, {50.0000, 3.2592, 0.3350}, 1.0000},
    {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
    {{63.0109, -31.0961, -5.8663}, {62.8187, -29.7946, -4.0864}, 1.2630},
    {{61.2901, 3.7196, -5.3901}, {61.4292, 2.2480, -4.9620}, 1.8731},
    {{35.0831, -44.1164, 3.7933}, {35.0232, -40.0716, 1.5901}, 1.8645},
    {{22.7233, 20.0904, -46.6940}, {23.0331, 14.9730, -42.5619}, 2.0373},
    {{36.4612, 47.8580, 18.3852}, {36.2715, 50.5065, 21.2231}, 1.4146},
    {{90.8027, -2.0831, 1.4410}, {91.1528, -1.6435, 0.0447}, 1.4441},
    {{90.9257, -0.5406, -0.9208}, {88.6381, -0.8985, -0.7239}, 1.5381},
    {{6.7747, -0.2908, -2.4247}, {5.8714, -0.0985, -2.2286}, 0.6377},
    {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082}};

}  // namespace

TEST_CASE("the measure of colours is that of the published pairs") {
    for (const published& p : table_1) {
        CHECK(std::abs(ciede2000(p.one, p.other) - p.apart) < 0.5e-4 + 1e-9);
    }
}

TEST_CASE("steps of the scale of lengths look alike, whatever cones a reader has") {
    const std::vector<shade>& all = io::dog_outline().shades;
    REQUIRE(all.size() >= 6);
    for (const reader& r : readers) {
        std::vector<double> steps;
        double sum = 0.0;
        for (std::size_t i = 1; i < all.size(); ++i) {
            const triple before = lab_of(seen_by(r, light_of(all[i - 1].colour)));
            const triple here = lab_of(seen_by(r, light_of(all[i].colour)));
            INFO(r.sees << ", step " << i);
            CHECK(here[0] < before[0] - 5.0);  // longer is darker, so it holds in black and white
            steps.push_back(ciede2000(before, here));
            sum += steps.back();
        }
        for (const double s : steps) {
            INFO(r.sees);
            CHECK(std::abs(s * static_cast<double>(steps.size()) / sum - 1.0) <= 0.2);
            CHECK(s > 5.0);  // each is told from the next
        }
    }
}

TEST_CASE("figures on the dog can be read") {
    const triple ink = light_of("#1a1a1a");
    for (const shade& s : io::dog_outline().shades) {
        // the tag behind a figure is white and lets 12 % through
        std::string tag = "#";
        for (std::size_t i = 0; i < 3; ++i) {
            const int c = std::stoi(s.colour.substr(1 + 2 * i, 2), nullptr, 16);
            constexpr std::string_view digits = "0123456789abcdef";
            const auto mixed = static_cast<std::size_t>(0.88 * 255.0 + 0.12 * c);
            tag += digits[mixed / 16];
            tag += digits[mixed % 16];
        }
        CHECK(contrast(ink, light_of(tag)) > 7.0);
    }
    CHECK(contrast(light_of("#e9e7e0"), light_of("#1d1d1b")) > 7.0);
}

TEST_CASE("a length has the shade it ends before") {
    const outline& o = io::dog_outline();
    CHECK(shade_of(o, mm(0.0)) == 0);
    CHECK(shade_of(o, mm(1.99)) == 0);
    CHECK(shade_of(o, mm(2.0)) == 1);
    CHECK(shade_of(o, mm(500.0)) == o.shades.size() - 1);
}
