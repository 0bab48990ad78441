/* Vectors of axle loads and ratings. */
#ifndef TOW_LOAD_H
#define TOW_LOAD_H

#include "vectors.h"
#include <math.h>

static double load_number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static tw_reading load_reading(const vectors_row *row, const char *value, const char *u) {
    const tw_reading reading = {load_number(row, value), load_number(row, u)};
    return reading;
}

static tw_status load_rule(const vectors_row *row, tw_rule *rule) {
    return tw_judge_stated_chances(load_number(row, "go"), load_number(row, "no_go"), rule);
}

/* Copies the answers out if the status is one. */
static tw_status load_answer(tw_status status, double *out, const double *answers, size_t size) {
    if (status >= 0) memcpy(out, answers, size);
    return status;
}

static tw_levers load_levers(const vectors_row *row) {
    const tw_levers levers = {load_number(row, "wheelbase_mm"), load_number(row, "overhang_mm")};
    return levers;
}

static tw_coupled load_coupled(const vectors_row *row) {
    const tw_coupled coupled = {
        {load_reading(row, "front_kg", "front_u_kg"), load_reading(row, "rear_kg", "rear_u_kg")},
        {load_reading(row, "mass_kg", "mass_u_kg"), load_reading(row, "hitch_kg", "hitch_u_kg")},
        load_levers(row),
        {load_number(row, "moment_nm"), load_number(row, "ball_to_axle_mm")},
    };
    return coupled;
}

static tw_status load_axle_loads(const vectors_row *row, double *out) {
    const tw_coupled c = load_coupled(row);
    tw_combination_loads l = {0};
    const tw_status status = tw_tow_axle_loads(&c.weighed, &c.trailer, &c.levers, &c.distribution, &l);
    const double answers[] = {l.hitch_kg.value, l.hitch_kg.u, l.front_kg.value, l.front_kg.u, l.rear_kg.value, l.rear_kg.u, l.truck_kg.value,
        l.truck_kg.u, l.trailer_axles_kg.value, l.combination_kg.value, l.combination_kg.u};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status load_by_share(const vectors_row *row, double *out) {
    const tw_reading mass = load_reading(row, "mass_kg", "mass_u_kg"), share = load_reading(row, "hitch_share", "hitch_share_u");
    tw_trailer trailer = {0};
    const tw_status status = tw_tow_by_share(&mass, &share, &trailer);
    const double answers[] = {trailer.hitch_kg.value, trailer.hitch_kg.u};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status load_share_band_kg(const vectors_row *row, double *out) {
    const tw_limits share = {load_number(row, "low_share"), load_number(row, "high_share")};
    tw_limits band = {0};
    const tw_status status = tw_tow_share_band_kg(load_number(row, "mass_kg"), &share, &band);
    const double answers[] = {band.lower, band.upper};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status load_restoring_moment_nm(const vectors_row *row, double *out) {
    const tw_levers levers = load_levers(row);
    return tw_tow_restoring_moment_nm(
        load_number(row, "hitch_kg"), &levers, load_number(row, "ball_to_axle_mm"), load_number(row, "restored_share"), &out[0]);
}

static tw_status load_gvwr_class(const vectors_row *row, double *out) {
    uint32_t class_number = 0;
    const tw_status status = tw_tow_gvwr_class(load_number(row, "gvwr_kg"), &class_number);
    const double answers[] = {(double)class_number};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status load_gvwr_least_kg(const vectors_row *row, double *out) {
    return tw_tow_gvwr_least_kg(load_number(row, "unloaded_kg"), load_number(row, "cargo_kg"), (uint32_t)load_number(row, "seats"), &out[0]);
}

static tw_status load_gawr_left_kg(const vectors_row *row, double *out) {
    return tw_tow_gawr_left_kg(load_number(row, "gvwr_kg"), load_number(row, "gawr_front_kg"), load_number(row, "gawr_rear_kg"), &out[0]);
}

static tw_status load_axle_tires_kg(const vectors_row *row, double *out) {
    const bool passenger = load_number(row, "passenger") > 0.5;
    return tw_tow_axle_tires_kg(load_number(row, "tire_kg"), (uint32_t)load_number(row, "tires"), passenger, &out[0]);
}

static int32_t load_kind(const vectors_row *row) {
    static const char *const KINDS[] = {"combination", "vehicle", "front_axle", "rear_axle", "front_tires", "rear_tires", "maker_trailer",
        "hitch_trailer", "hitch_load", "trailer_gross"};
    for (int32_t kind = 0; kind < 10; kind++)
        if (strcmp(KINDS[kind], vectors_text(row, "kind")) == 0) return kind + 1;
    return 0;
}

static tw_status load_rating_check(const vectors_row *row, double *out) {
    const tw_coupled coupled = load_coupled(row);
    tw_rule rule;
    const tw_status ruled = load_rule(row, &rule);
    if (ruled < 0) return ruled;
    static tw_rating_check c;
    const tw_status status = tw_tow_rating_check(&coupled, load_kind(row), load_number(row, "rating_kg"), &rule, &c);
    const double answers[] = {c.load_kg.value, c.load_kg.u, c.left_kg, c.used_share, c.trailer_limit_kg, c.proven_trailer_kg, c.judgment.chance,
        (double)c.judgment.verdict, (double)c.weigh_next};
    return load_answer(status, out, answers, sizeof answers);
}

static tw_status load_review_ratings(const vectors_row *row, double *out) {
    const tw_coupled coupled = load_coupled(row);
    const tw_tow_ratings ratings = {
        load_number(row, "gcwr_kg"),        load_number(row, "gvwr_kg"),          load_number(row, "gawr_front_kg"),
        load_number(row, "gawr_rear_kg"),   load_number(row, "tires_front_kg"),   load_number(row, "tires_rear_kg"),
        load_number(row, "maker_trailer_kg"), load_number(row, "hitch_trailer_kg"), load_number(row, "hitch_load_kg"),
        load_number(row, "trailer_gross_kg"),
    };
    tw_rule rule;
    const tw_status ruled = load_rule(row, &rule);
    if (ruled < 0) return ruled;
    static tw_rating_review r;
    const tw_status status = tw_tow_review_ratings(&coupled, &ratings, &rule, &r);
    const double answers[] = {(double)r.given, (double)r.governing, (double)r.fullest, r.trailer_limit_kg, r.proven_trailer_kg, r.payload_left_kg,
        (double)r.verdict};
    return load_answer(status, out, answers, sizeof answers);
}

#define TOW_LOAD_TESTS \
    {"tow_axle_loads", load_axle_loads}, {"tow_by_share", load_by_share}, {"tow_share_band_kg", load_share_band_kg}, \
    {"tow_restoring_moment_nm", load_restoring_moment_nm}, {"tow_gvwr_class", load_gvwr_class}, \
    {"tow_gvwr_least_kg", load_gvwr_least_kg}, {"tow_gawr_left_kg", load_gawr_left_kg}, \
    {"tow_axle_tires_kg", load_axle_tires_kg}, {"tow_rating_check", load_rating_check}, \
    {"tow_review_ratings", load_review_ratings}

#endif
