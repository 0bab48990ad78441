/* The stack chapter's vectors in C. */
#include "vectors.h"

#include <math.h>

enum { LIST = 24 };

static double number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static uint32_t count(const vectors_row *row, const char *column) { return (uint32_t)number(row, column); }

static tw_reading reading(const vectors_row *row, const char *value, const char *u) {
    const tw_reading of = {number(row, value), number(row, u)};
    return of;
}

static tw_limits size(const vectors_row *row) {
    const tw_limits limits = {number(row, "lower"), number(row, "upper")};
    return limits;
}

/* Numbers of a cell, written with spaces. */
static size_t list(const vectors_row *row, const char *column, double *values) {
    const char *text = vectors_text(row, column);
    size_t given = 0;
    for (char *end = NULL; given < LIST; text = end) {
        const double value = strtod(text, &end);
        if (end == text) break;
        values[given++] = value;
    }
    return given;
}

static void rule_of(const vectors_row *row, tw_rule *rule) {
    rule->go = number(row, "go");
    rule->no_go = number(row, "no_go");
    rule->k = 0.0;
    rule->kind = TW_RULE_KIND_STATED_CHANCES;
}

static void link_fields(const tw_chain_link *link, double *out) {
    out[0] = link->value_mm;
    out[1] = link->half_width_mm;
    out[2] = link->u_mm;
}

static tw_status toleranced(const vectors_row *row, double *out) {
    tw_chain_link link;
    const tw_limits size_mm = size(row);
    const tw_spread spread = (tw_spread)number(row, "spread");
    const tw_status status = tw_stack_toleranced(number(row, "sensitivity"), &size_mm, spread, &link);
    if (status >= 0) link_fields(&link, out);
    return status;
}

static tw_status measured(const vectors_row *row, double *out) {
    tw_chain_link link;
    const tw_reading size_mm = reading(row, "value", "u");
    const tw_status status = tw_stack_measured(number(row, "sensitivity"), &size_mm, number(row, "k"), &link);
    if (status >= 0) link_fields(&link, out);
    return status;
}

static tw_status chain(const vectors_row *row, double *out) {
    double sensitivity[LIST], value[LIST], half_width[LIST], u[LIST];
    tw_chain_link links[LIST];
    tw_chain result;
    const size_t given = list(row, "sensitivity", sensitivity);
    list(row, "value_mm", value);
    list(row, "half_width_mm", half_width);
    list(row, "u_mm", u);
    for (size_t i = 0; i < given; i++) {
        const tw_chain_link link = {sensitivity[i], value[i], half_width[i], u[i]};
        links[i] = link;
    }
    const tw_status status = tw_stack_chain(links, given, &result);
    if (status < 0) return status;
    out[0] = result.reading_mm.value;
    out[1] = result.reading_mm.u;
    out[2] = result.worst_half_mm;
    out[3] = result.worst_mm.lower;
    out[4] = result.worst_mm.upper;
    out[5] = result.rss_half_mm;
    out[6] = result.rss_mm.lower;
    out[7] = result.rss_mm.upper;
    out[8] = result.rss_chance;
    out[9] = result.budget.largest;
    return status;
}

static tw_status grown(const vectors_row *row, double *out) {
    const tw_axial_growth growth = {
        reading(row, "case_length_mm", "case_length_u_mm"),
        reading(row, "train_length_mm", "train_length_u_mm"),
        reading(row, "case_expansion_per_k", "case_expansion_u_per_k"),
        reading(row, "train_expansion_per_k", "train_expansion_u_per_k"),
        number(row, "reference_c"),
    };
    const tw_reading temp_c = reading(row, "temp_c", "temp_u_c");
    const tw_reading hotter_k = reading(row, "train_hotter_k", "train_hotter_u_k");
    tw_grown_play hot;
    const tw_status status = tw_stack_grown(&growth, &temp_c, &hotter_k, &hot);
    if (status < 0) return status;
    out[0] = hot.case_mm;
    out[1] = hot.train_mm;
    out[2] = hot.growth_mm.value;
    out[3] = hot.growth_mm.u;
    out[4] = hot.budget.largest;
    return status;
}

static tw_status growth_mm(const vectors_row *row, double *out) {
    const tw_axial_growth growth = {
        {number(row, "case_length_mm"), 0.0},
        {number(row, "train_length_mm"), 0.0},
        {number(row, "case_expansion_per_k"), 0.0},
        {number(row, "train_expansion_per_k"), 0.0},
        number(row, "reference_c"),
    };
    return tw_stack_growth_mm(&growth, number(row, "temp_c"), number(row, "train_hotter_k"), &out[0]);
}

static tw_selection selection(const vectors_row *row) {
    tw_selection of;
    memset(&of, 0, sizeof of);
    of.room_mm = reading(row, "room_mm", "room_u_mm");
    of.window_mm = size(row);
    of.target_mm = number(row, "target_mm");
    of.growth_mm = reading(row, "growth_mm", "growth_u_mm");
    of.hot_window_mm.lower = number(row, "hot_lower");
    of.hot_window_mm.upper = number(row, "hot_upper");
    rule_of(row, &of.rule);
    of.by = count(row, "by") == 0 ? TW_CHOICE_RULE_NEAREST_TARGET : TW_CHOICE_RULE_LEAST_RISK;
    of.hot_counts = count(row, "hot_counts") != 0;
    return of;
}

static size_t pieces(const vectors_row *row, tw_piece *list_of) {
    double thickness[LIST], u[LIST], stock[LIST];
    const size_t given = list(row, "thickness_mm", thickness);
    list(row, "thickness_u_mm", u);
    list(row, "in_stock", stock);
    for (size_t i = 0; i < given; i++) {
        const tw_piece piece = {{thickness[i], u[i]}, stock[i] > 0.0};
        list_of[i] = piece;
    }
    return given;
}

static tw_status outcome(const vectors_row *row, double *out) {
    const tw_selection of = selection(row);
    const tw_piece piece = {reading(row, "thickness_mm", "thickness_u_mm"), true};
    tw_piece_outcome result;
    const tw_status status = tw_stack_outcome(&of, &piece, &result);
    if (status < 0) return status;
    out[0] = result.cold.reading.value;
    out[1] = result.cold.reading.u;
    out[2] = result.cold.chance;
    out[3] = result.cold.verdict;
    out[4] = result.hot.reading.value;
    out[5] = result.hot.reading.u;
    out[6] = result.hot.chance;
    out[7] = result.hot.verdict;
    out[8] = result.off_target_mm;
    out[9] = result.off_middle_mm;
    out[10] = result.chance;
    out[11] = result.inside;
    return status;
}

static tw_status choose(const vectors_row *row, double *out) {
    const tw_selection of = selection(row);
    tw_piece list_of[LIST];
    tw_piece_choice choice;
    const size_t given = pieces(row, list_of);
    const tw_status status = tw_stack_choose(&of, list_of, given, &choice);
    if (status < 0) return status;
    out[0] = choice.found;
    out[1] = choice.position;
    out[2] = choice.nearest_target;
    out[3] = choice.least_risk;
    out[4] = choice.missing_better;
    out[5] = choice.missing;
    out[6] = choice.wanted_mm;
    out[7] = choice.inside_mm.lower;
    out[8] = choice.inside_mm.upper;
    out[9] = choice.go_mm.lower;
    out[10] = choice.go_mm.upper;
    return status;
}

static tw_status pick(const vectors_row *row, double *out) {
    const tw_selection of = selection(row);
    tw_piece list_of[LIST];
    tw_picked_piece picked;
    const size_t given = pieces(row, list_of);
    const tw_status status = tw_stack_pick(&of, list_of, given, &picked);
    if (status < 0) return status;
    out[0] = picked.position;
    out[1] = picked.thickness_mm.value;
    out[2] = picked.result_mm.value;
    out[3] = picked.result_mm.u;
    out[4] = picked.chance;
    return status;
}

static tw_status mean_of_steps(const vectors_row *row, double *out) {
    double values[LIST];
    tw_repeated mean;
    const size_t given = list(row, "values", values);
    const tw_status status =
        tw_stack_mean_of_steps(values, given, number(row, "quantum"), number(row, "u_of_one"), &mean);
    if (status < 0) return status;
    out[0] = mean.reading.value;
    out[1] = mean.reading.u;
    out[2] = mean.deviation;
    out[3] = mean.freedom;
    return status;
}

static tw_status what_to_measure(const vectors_row *row, double *out) {
    double sensitivity[LIST], u[LIST], u_measured[LIST];
    tw_input inputs[LIST];
    tw_budget budget;
    tw_rule rule;
    tw_judgment judgment;
    tw_measure_plan plan;
    const size_t given = list(row, "sensitivity", sensitivity);
    const size_t measured_inputs = list(row, "u_measured", u_measured);
    const tw_limits limits = size(row);
    list(row, "u", u);
    for (size_t i = 0; i < given; i++) {
        const tw_input input = {sensitivity[i], u[i], (double)INFINITY};
        inputs[i] = input;
    }
    tw_status status = tw_judge_combine(inputs, given, &budget);
    if (status >= 0) status = tw_judge_stated_chances(number(row, "go"), number(row, "no_go"), &rule);
    if (status >= 0) {
        const tw_reading value = {number(row, "value"), budget.u};
        status = tw_judge_judge(&value, &limits, &rule, &judgment);
    }
    if (status >= 0) status = tw_stack_what_to_measure(&judgment, &budget, u_measured, measured_inputs, &plan);
    if (status < 0) return status;
    const tw_measure_gain *first = &plan.gains[0], *second = &plan.gains[1];
    out[0] = first->input;
    out[1] = second->input;
    out[2] = first->share;
    out[3] = second->share_so_far;
    out[4] = first->u_of_result;
    out[5] = first->chance_go;
    out[6] = first->chance_no_go;
    out[7] = first->u_needed;
    out[8] = first->enough;
    return status;
}

static tw_status room_from_fitted(const vectors_row *row, double *out) {
    const tw_reading clearance_mm = reading(row, "clearance_mm", "clearance_u_mm");
    const tw_reading fitted_mm = reading(row, "fitted_mm", "fitted_u_mm");
    tw_reading room;
    const tw_status status = tw_stack_room_from_fitted(&clearance_mm, &fitted_mm, &room);
    if (status < 0) return status;
    out[0] = room.value;
    out[1] = room.u;
    return status;
}

static tw_status room_from_heights(const vectors_row *row, double *out) {
    const tw_pack_heights heights = {
        reading(row, "drum_depth_mm", "drum_depth_u_mm"),
        count(row, "friction_plates"),
        reading(row, "friction_mm", "friction_u_mm"),
        count(row, "steel_plates"),
        reading(row, "steel_mm", "steel_u_mm"),
        reading(row, "pressure_plate_mm", "pressure_plate_u_mm"),
        reading(row, "wave_plate_mm", "wave_plate_u_mm"),
    };
    tw_pack_room room;
    const tw_status status = tw_stack_room_from_heights(&heights, &room);
    if (status < 0) return status;
    out[0] = room.plates_mm;
    out[1] = room.room_mm.value;
    out[2] = room.room_mm.u;
    out[3] = room.budget.largest;
    return status;
}

static tw_status piston_travel(const vectors_row *row, double *out) {
    const tw_piston_stroke stroke = {
        reading(row, "clearance_mm", "clearance_u_mm"),
        reading(row, "wave_mm", "wave_u_mm"),
        reading(row, "bend_mm", "bend_u_mm"),
        reading(row, "land_mm", "land_u_mm"),
    };
    tw_rule rule;
    tw_piston_travel travel;
    rule_of(row, &rule);
    const tw_status status = tw_stack_piston_travel(&stroke, &rule, &travel);
    if (status < 0) return status;
    out[0] = travel.travel_mm.value;
    out[1] = travel.travel_mm.u;
    out[2] = travel.judgment.reading.value;
    out[3] = travel.judgment.reading.u;
    out[4] = travel.judgment.chance;
    out[5] = travel.judgment.verdict;
    out[6] = travel.budget.largest;
    return status;
}

static tw_status apply_fill(const vectors_row *row, double *out) {
    const tw_annulus piston = {number(row, "inner_radius_mm"), number(row, "outer_radius_mm")};
    const tw_reading travel_mm = reading(row, "travel_mm", "travel_u_mm");
    const tw_reading flow_l_min = reading(row, "flow_l_min", "flow_u_l_min");
    tw_apply_fill fill;
    const tw_status status = tw_stack_apply_fill(&piston, &travel_mm, &flow_l_min, &fill);
    if (status < 0) return status;
    out[0] = fill.area_mm2;
    out[1] = fill.volume_ml.value;
    out[2] = fill.volume_ml.u;
    out[3] = fill.time_s.value;
    out[4] = fill.time_s.u;
    return status;
}

static const vectors_test TESTS[] = {
    {"stack_toleranced", toleranced},
    {"stack_measured", measured},
    {"stack_chain", chain},
    {"stack_grown", grown},
    {"stack_growth_mm", growth_mm},
    {"stack_outcome", outcome},
    {"stack_choose", choose},
    {"stack_pick", pick},
    {"stack_mean_of_steps", mean_of_steps},
    {"stack_what_to_measure", what_to_measure},
    {"stack_room_from_fitted", room_from_fitted},
    {"stack_room_from_heights", room_from_heights},
    {"stack_piston_travel", piston_travel},
    {"stack_apply_fill", apply_fill},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
