#include "judges/glpk_judge.hpp"

#include <cmath>
#include <memory>

#include <glpk.h>

namespace judges {

namespace {

struct deleter {
    void operator()(glp_prob* p) const { glp_delete_prob(p); }
};
using model = std::unique_ptr<glp_prob, deleter>;

void add_columns(const integer_programme& ip, glp_prob* p) {
    glp_add_cols(p, static_cast<int>(ip.columns.size()));
    int at = 0;
    for (const column& c : ip.columns) {
        ++at;
        glp_set_obj_coef(p, at, static_cast<double>(c.cost));
        glp_set_col_kind(p, at, c.whole ? GLP_IV : GLP_CV);
        if (c.most == column::no_limit) {
            glp_set_col_bnds(p, at, GLP_LO, 0, 0);
        } else {
            glp_set_col_bnds(p, at, GLP_DB, 0, static_cast<double>(c.most));
        }
    }
}

void add_rows(const integer_programme& ip, glp_prob* p) {
    glp_add_rows(p, static_cast<int>(ip.rows.size()));
    int at = 0;
    for (const row& r : ip.rows) {
        ++at;
        std::vector<int> columns{0};  // GLPK counts from 1
        std::vector<double> factors{0};
        for (const term& t : r.terms) {
            columns.push_back(static_cast<int>(t.column) + 1);
            factors.push_back(static_cast<double>(t.factor));
        }
        const int kind = r.holds == relation::equal      ? GLP_FX
                         : r.holds == relation::at_least ? GLP_LO
                                                         : GLP_UP;
        const auto right = static_cast<double>(r.right);
        glp_set_row_bnds(p, at, kind, right, right);
        glp_set_mat_row(p, at, static_cast<int>(r.terms.size()), columns.data(), factors.data());
    }
}

verdict read_back(const pelage::problem& p, const integer_programme& ip, glp_prob* m) {
    verdict v;
    const int status = glp_mip_status(m);
    if (status == GLP_NOFEAS) {
        v.proven = true;
        return v;
    }
    if (status != GLP_OPT && status != GLP_FEAS) {
        return v;
    }
    std::vector<double> value;
    for (std::size_t c = 0; c < ip.columns.size(); ++c) {
        value.push_back(glp_mip_col_val(m, static_cast<int>(c) + 1));
    }
    const auto plan = chosen(p, ip, value);
    if (!plan) {
        v.trouble = "GLPK's answer isn't one setup a zone";
        return v;
    }
    v = judged(p, *plan, status == GLP_OPT);
    if (v.proven && std::llround(glp_mip_obj_val(m)) != v.cost) {
        v.trouble = "GLPK's objective differs from the cost of its plan: the model is wrong";
    }
    return v;
}

}  // namespace

verdict by_glpk(const pelage::problem& p, form f, double most_seconds) {
    glp_term_out(GLP_OFF);
    const integer_programme ip = written(p, f);
    const model m(glp_create_prob());
    glp_set_obj_dir(m.get(), GLP_MIN);
    add_columns(ip, m.get());
    add_rows(ip, m.get());
    glp_iocp how;
    glp_init_iocp(&how);
    how.presolve = GLP_ON;
    how.tm_lim = static_cast<int>(most_seconds * 1000);
    const stopwatch clock;
    const int failed = glp_intopt(m.get(), &how);
    const seconds_spent spent = clock.read();
    verdict v;
    if (failed == GLP_ENOPFS) {  // the presolver's word that there is no plan
        v.proven = true;
    } else if (failed == 0 || failed == GLP_ETMLIM) {
        v = read_back(p, ip, m.get());
    } else {
        v.trouble = "GLPK gave up with code " + std::to_string(failed);
    }
    v.spent = spent;
    return v;
}

}  // namespace judges
