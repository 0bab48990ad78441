/* The fluid chapter's vectors in C. */
#include "vectors.h"

#define NUMBER(name) vectors_number(row, name)

/* The demonstration's fill. */
static const tw_fill FILL = {
    .sump = {9, {-60, -45, -30, -15, 0, 10, 20, 30, 45}, {150, 190, 240, 330, 395, 455, 520, 560, 575}},
    .dry_l = 11.4,
    .service_l = 5.2,
    .cooler_and_lines_l = 0.8,
    .drainback_off_l = 1.6,
    .check_low_c = 42,
    .check_high_c = 52,
    .check_reference_c = 47,
    .pickup_uncovers_mm = -31,
    .gear_dips_mm = 17,
};

static tw_fluid fluid(const vectors_row *row) {
    const tw_fluid fluid = {NUMBER("density_15c_kg_m3"), NUMBER("expansion_per_k"), 27.4, 5.6};
    return fluid;
}

static tw_viscosity_points points(const vectors_row *row) {
    const tw_viscosity_points points = {NUMBER("first_c"), NUMBER("first_mm2_s"), NUMBER("second_c"), NUMBER("second_mm2_s")};
    return points;
}

static tw_status sump(const vectors_row *row, tw_sump *out) {
    const double height_mm[3] = {NUMBER("bottom_mm"), 0, NUMBER("top_mm")};
    const double free_area_cm2[3] = {NUMBER("bottom_cm2"), NUMBER("edge_cm2"), NUMBER("top_cm2")};
    return tw_fluid_from_table(height_mm, free_area_cm2, 3, out);
}

static tw_status volume_correction(const vectors_row *row, double *out) {
    tw_volume_correction c;
    const tw_status status = tw_fluid_volume_correction(NUMBER("density_15c_kg_m3"), NUMBER("temp_c"), &c);
    if (status < 0) return status;
    out[0] = c.alpha_per_k;
    out[1] = c.rise_k;
    out[2] = c.factor;
    out[3] = c.density_kg_m3;
    return status;
}

static tw_status volume_correction_60f(const vectors_row *row, double *out) {
    tw_volume_correction c;
    const tw_status status = tw_fluid_volume_correction_60f(NUMBER("density_60f_kg_m3"), NUMBER("temp_c"), &c);
    if (status < 0) return status;
    out[0] = c.alpha_per_k;
    out[1] = c.factor;
    out[2] = c.density_kg_m3;
    return status;
}

static tw_status correction_factor(const vectors_row *row, double *out) {
    return tw_fluid_correction_factor(NUMBER("alpha_per_k"), NUMBER("rise_k"), out);
}

static tw_status density_15c_from_observed(const vectors_row *row, double *out) {
    return tw_fluid_density_15c_from_observed(NUMBER("density_kg_m3"), NUMBER("temp_c"), out);
}

static tw_status expansion_from_15c(const vectors_row *row, double *out) {
    return tw_fluid_expansion_from_15c(NUMBER("expansion_per_k"), NUMBER("reference_c"), out);
}

static tw_status growth_ml(const vectors_row *row, double *out) {
    const tw_growth growth = {NUMBER("volume_ml"), NUMBER("expansion_per_k"), NUMBER("vessel_linear_per_k"), NUMBER("rise_k")};
    return tw_fluid_growth_ml(&growth, out);
}

static tw_status volume_factor(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    return tw_fluid_volume_factor(&of, NUMBER("temp_c"), out);
}

static tw_status temp_for_volume_factor(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    return tw_fluid_temp_for_volume_factor(&of, NUMBER("factor"), out);
}

static tw_status density(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    return tw_fluid_density(&of, NUMBER("temp_c"), out);
}

typedef tw_status (*draw)(const tw_viscosity_points *, tw_viscosity_line *);

static tw_status line(const vectors_row *row, draw through, tw_viscosity_line *out) {
    const tw_viscosity_points of = points(row);
    return through(&of, out);
}

static tw_status line_of(const vectors_row *row, draw through, double *out) {
    tw_viscosity_line of;
    const tw_status status = line(row, through, &of);
    if (status < 0) return status;
    out[0] = of.a;
    out[1] = of.b;
    return status;
}

static tw_status through(const vectors_row *row, double *out) { return line_of(row, tw_fluid_through, out); }

static tw_status through_thin(const vectors_row *row, double *out) { return line_of(row, tw_fluid_through_thin, out); }

static tw_status through_older(const vectors_row *row, double *out) {
    tw_viscosity_line of;
    const tw_status status = line(row, tw_fluid_through_older, &of);
    if (status < 0) return status;
    out[0] = of.a;
    out[1] = of.b;
    out[2] = of.added_mm2_s;
    return status;
}

static tw_status viscosity_at(const vectors_row *row, double *out) {
    tw_viscosity_line of;
    const bool older = NUMBER("added_mm2_s") > 0.75;
    const tw_status status = line(row, older ? tw_fluid_through_older : tw_fluid_through, &of);
    return status < 0 ? status : tw_fluid_viscosity_at(&of, NUMBER("temp_c"), out);
}

static tw_status thin_viscosity_at(const vectors_row *row, double *out) {
    tw_viscosity_line of;
    const tw_status status = line(row, tw_fluid_through_thin, &of);
    return status < 0 ? status : tw_fluid_thin_viscosity_at(&of, NUMBER("temp_c"), out);
}

static tw_status temp_for_viscosity(const vectors_row *row, double *out) {
    tw_viscosity_line of;
    const tw_status status = line(row, tw_fluid_through, &of);
    return status < 0 ? status : tw_fluid_temp_for_viscosity(&of, NUMBER("viscosity_mm2_s"), out);
}

static tw_status dynamic_viscosity(const vectors_row *row, double *out) {
    return tw_fluid_dynamic_viscosity(NUMBER("kinematic_mm2_s"), NUMBER("density_kg_m3"), out);
}

static tw_status viscosity_index(const vectors_row *row, double *out) {
    const tw_viscosity_pair pair = {NUMBER("viscosity_40c_mm2_s"), NUMBER("viscosity_100c_mm2_s")};
    tw_viscosity_index vi;
    const tw_status status = tw_fluid_viscosity_index(&pair, &vi);
    if (status < 0) return status;
    out[0] = vi.zero_40c_mm2_s;
    out[1] = vi.hundred_40c_mm2_s;
    out[2] = vi.index;
    out[3] = vi.reported;
    return status;
}

static tw_status viscosity_100c_for_index(const vectors_row *row, double *out) {
    return tw_fluid_viscosity_100c_for_index(NUMBER("viscosity_40c_mm2_s"), NUMBER("index"), out);
}

static tw_status blend(const vectors_row *row, double *out) {
    const tw_portion portions[2] = {
        {{NUMBER("first_density_kg_m3"), NUMBER("first_expansion_per_k"), NUMBER("first_40c_mm2_s"), NUMBER("first_100c_mm2_s")},
         NUMBER("first_ml")},
        {{NUMBER("second_density_kg_m3"), NUMBER("second_expansion_per_k"), NUMBER("second_40c_mm2_s"),
          NUMBER("second_100c_mm2_s")},
         NUMBER("second_ml")},
    };
    tw_fluid mix;
    const tw_status status = tw_fluid_blend(portions, 2, &mix);
    if (status < 0) return status;
    out[0] = mix.density_15c_kg_m3;
    out[1] = mix.expansion_per_k;
    out[2] = mix.viscosity_40c_mm2_s;
    out[3] = mix.viscosity_100c_mm2_s;
    return status;
}

static tw_status blend_viscosity(const vectors_row *row, double *out) {
    const tw_viscosity_portion portions[2] = {
        {NUMBER("first_mm2_s"), NUMBER("first_ml")},
        {NUMBER("second_mm2_s"), NUMBER("second_ml")},
    };
    return tw_fluid_blend_viscosity(portions, 2, out);
}

static tw_status blend_friction(const vectors_row *row, double *out) {
    const tw_friction_portion portions[2] = {
        {NUMBER("first_friction"), NUMBER("first_ml")},
        {NUMBER("second_friction"), NUMBER("second_ml")},
    };
    return tw_fluid_blend_friction(portions, 2, out);
}

static tw_status old_share(const vectors_row *row, double *out) {
    return tw_fluid_old_share(NUMBER("changed_fraction"), (uint32_t)NUMBER("changes"), out);
}

static tw_status constant_area_level_mm(const vectors_row *row, double *out) {
    return tw_fluid_constant_area_level_mm(NUMBER("above_edge_ml"), NUMBER("area_cm2"), out);
}

static tw_status tilt_shift_mm(const vectors_row *row, double *out) {
    return tw_fluid_tilt_shift_mm(NUMBER("offset_mm"), NUMBER("tilt_deg"), out);
}

static tw_status volume_to(const vectors_row *row, double *out) {
    tw_sump of;
    const tw_status status = sump(row, &of);
    return status < 0 ? status : tw_fluid_volume_to(&of, NUMBER("height_mm"), out);
}

static tw_status level_for(const vectors_row *row, double *out) {
    tw_sump of;
    const tw_status status = sump(row, &of);
    return status < 0 ? status : tw_fluid_level_for(&of, NUMBER("volume_ml"), out);
}

static tw_status free_area_at(const vectors_row *row, double *out) {
    tw_sump of;
    const tw_status status = sump(row, &of);
    return status < 0 ? status : tw_fluid_free_area_at(&of, NUMBER("height_mm"), out);
}

static tw_status level_at(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    tw_level_at at;
    const tw_status status = tw_fluid_level_at(&FILL, &of, NUMBER("excess_ml"), NUMBER("temp_c"), &at);
    if (status < 0) return status;
    out[0] = at.above_edge_ml;
    out[1] = at.level_mm;
    out[2] = at.constant_area_level_mm;
    out[3] = at.gear_margin_mm;
    out[4] = at.pickup_margin_mm;
    return status;
}

static tw_status adjust_fill(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    const tw_level_check check = {
        {NUMBER("temp_c"), NUMBER("temp_u_c")},
        {NUMBER("level_mm"), NUMBER("level_u_mm")},
        {NUMBER("area_scale"), NUMBER("area_scale_u")},
    };
    tw_rule rule;
    tw_adjustment found;
    tw_status status = tw_judge_conformance(0.95, &rule);
    if (status >= 0) status = tw_fluid_adjust_fill(&FILL, &of, &check, &rule, &found);
    if (status < 0) return status;
    out[0] = found.add_now_ml.value;
    out[1] = found.add_now_ml.u;
    out[2] = found.excess_ml.reading.value;
    out[3] = found.excess_ml.reading.u;
    out[4] = found.excess_ml.limits.lower;
    out[5] = found.excess_ml.limits.upper;
    out[6] = found.excess_ml.chance;
    out[7] = found.chance_in_window;
    return status;
}

static tw_status engine_off_level_mm(const vectors_row *row, double *out) {
    return tw_fluid_engine_off_level_mm(&FILL, NUMBER("running_level_mm"), out);
}

static tw_status gear_dips_at_c(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    return tw_fluid_gear_dips_at_c(&FILL, &of, NUMBER("excess_ml"), out);
}

static tw_status loss_to_pickup_ml(const vectors_row *row, double *out) {
    return tw_fluid_loss_to_pickup_ml(&FILL, NUMBER("level_mm"), out);
}

static tw_status pour_volumes(const vectors_row *row, double *out) {
    const tw_fluid of = fluid(row);
    tw_pour_volumes pour;
    const tw_status status = tw_fluid_pour_volumes(&FILL, &of, NUMBER("can_c"), &pour);
    if (status < 0) return status;
    out[0] = pour.dry_ml;
    out[1] = pour.service_ml;
    out[2] = pour.cooler_ml;
    out[3] = pour.old_share;
    return status;
}

static const vectors_test TESTS[] = {
    {"fluid_volume_correction", volume_correction},
    {"fluid_volume_correction_60f", volume_correction_60f},
    {"fluid_correction_factor", correction_factor},
    {"fluid_density_15c_from_observed", density_15c_from_observed},
    {"fluid_expansion_from_15c", expansion_from_15c},
    {"fluid_growth_ml", growth_ml},
    {"fluid_volume_factor", volume_factor},
    {"fluid_temp_for_volume_factor", temp_for_volume_factor},
    {"fluid_density", density},
    {"fluid_through", through},
    {"fluid_through_older", through_older},
    {"fluid_through_thin", through_thin},
    {"fluid_viscosity_at", viscosity_at},
    {"fluid_thin_viscosity_at", thin_viscosity_at},
    {"fluid_temp_for_viscosity", temp_for_viscosity},
    {"fluid_dynamic_viscosity", dynamic_viscosity},
    {"fluid_viscosity_index", viscosity_index},
    {"fluid_viscosity_100c_for_index", viscosity_100c_for_index},
    {"fluid_blend", blend},
    {"fluid_blend_viscosity", blend_viscosity},
    {"fluid_blend_friction", blend_friction},
    {"fluid_old_share", old_share},
    {"fluid_constant_area_level_mm", constant_area_level_mm},
    {"fluid_tilt_shift_mm", tilt_shift_mm},
    {"fluid_volume_to", volume_to},
    {"fluid_level_for", level_for},
    {"fluid_free_area_at", free_area_at},
    {"fluid_level_at", level_at},
    {"fluid_adjust_fill", adjust_fill},
    {"fluid_engine_off_level_mm", engine_off_level_mm},
    {"fluid_gear_dips_at_c", gear_dips_at_c},
    {"fluid_loss_to_pickup_ml", loss_to_pickup_ml},
    {"fluid_pour_volumes", pour_volumes},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
