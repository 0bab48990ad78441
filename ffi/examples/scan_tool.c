/* A scan tool for one unit. It opens the unit's flash image and prints
 *   1. the gear table: ratio, exact fraction, and the share of the turbine torque that each element carries
 *   2. the shift points before and after a tire change, and what the speedometer then shows
 *   3. the capacity of the packs against the rated torque, gear by gear
 *   4. the fluid level now, and what to add or drain
 *
 * The same file compiles for a PC and for a microcontroller: C99, C11 or C++17. The library allocates nothing; every struct
 * below is a local variable. `unit_image` is the image, put into flash by the linker (see flash_image.rs beside this file). */
#include "trainwright.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

extern const unsigned char unit_image[];
extern const size_t unit_image_bytes;

/* What the technician types in. */
static const char TIRE_FITTED[] = "35x12.50R17LT";
static const double FLUID_TEMP_C = 38.0; /* from the sump sensor */
static const double FLUID_TEMP_U_C = 1.0;
static const double FLUID_LEVEL_MM = -6.0; /* on the dipstick, 0 is the overflow edge */
static const double FLUID_LEVEL_U_MM = 0.5;

/* Every function returns a status; only a status of 0 or more comes with an answer. */
static void require(tw_status status, const char *what) {
    if (status < 0) {
        printf("%s: %s\n", what, tw_status_text(status));
        exit(1);
    }
}

static void print_text(tw_text text) { printf("%.*s", (int)text.length, text.start); }

static void print_caution(int32_t hazard) {
    tw_hazard_text text;
    require(tw_hazard_caution(hazard, &text), "caution");
    printf("  Caution: ");
    print_text(text.caution);
    printf("\n");
}

static void print_gear_name(const tw_flash_image *image, uint8_t gear) {
    tw_text name;
    require(tw_flash_gear_name(image, gear, &name), "gear name");
    printf("  %-4.*s", (int)name.length, name.start);
}

/* The state of a gear with the engine driving: one-way clutches hold or overrun as the torque makes them. */
static void solve_gear(const tw_flash_image *image, const tw_train *train, uint8_t index, tw_state *state) {
    tw_gear gear;
    require(tw_flash_gear(image, index, &gear), "gear");
    require(tw_train_resolve(train, gear.closed, TW_LOAD_DRIVE, state), "gear");
}

static void print_gear_table(const tw_flash_image *image, const tw_train *train, uint8_t gears) {
    printf("\n1. Gears: input speed / output speed, and share of turbine torque by element\n");
    for (uint8_t i = 0; i < gears; i++) {
        tw_state state;
        solve_gear(image, train, i, &state);
        print_gear_name(image, i);
        if (state.kind != TW_STATE_KIND_GEAR) {
            printf("no gear\n");
            continue;
        }
        printf("%8.4f  %7lld/%-7lld", (double)state.ratio.num / (double)state.ratio.den, (long long)state.ratio.num,
               (long long)state.ratio.den);
        for (uint8_t element = 0; element < train->element_count; element++) {
            const tw_fraction share = state.shares[element];
            tw_text name;
            if ((state.closed >> element & 1u) == 0) continue; /* open in this gear */
            require(tw_flash_element_name(image, element, &name), "element name");
            printf("  ");
            print_text(name);
            if (share.den == 0) {
                printf(" indeterminate"); /* two closed elements hold the same thing */
            } else {
                printf(" %.3f", (double)share.num / (double)share.den);
            }
        }
        printf("\n");
    }
}

/* The control shifts by output-shaft speed. It does not know that the tire changed. */
static void print_shift_points(const tw_flash_image *image) {
    tw_driveline programmed, fitted;
    tw_tire tire;
    tw_rolling rolling;
    tw_reading share;
    tw_speedometer shown;
    tw_numbers_to_program numbers;
    double diameter_mm = 0.0;
    uint8_t shifts = 0;

    require(tw_flash_driveline(image, &programmed), "drive line");
    require(tw_tire_parse(TIRE_FITTED, strlen(TIRE_FITTED), &tire), TIRE_FITTED);
    require(tw_tire_geometric_diameter_mm(&tire, &diameter_mm), "diameter");
    share.value = 0.968; /* a loaded tire rolls less far than pi times its diameter: measured on this fleet */
    share.u = 0.006;
    require(tw_tire_rolling_by_share(diameter_mm, &share, &rolling), "rolling circumference");
    fitted = programmed;
    fitted.circumference_mm = rolling.circumference_mm;

    printf("\n2. Shift points with axle %.2f: programmed tire rolls %.0f mm, %s rolls %.0f mm\n", programmed.axle_ratio,
           programmed.circumference_mm.value, TIRE_FITTED, fitted.circumference_mm.value);
    require(tw_flash_shift_count(image, &shifts), "shift schedule");
    for (uint8_t i = 0; i < shifts; i++) {
        tw_shift shift;
        tw_shift_point point;
        require(tw_flash_shift(image, i, &shift), "shift");
        require(tw_road_shift_at_output_speed(&programmed, &fitted, shift.output_rpm, &point), "shift point");
        print_gear_name(image, shift.from);
        printf("->");
        print_gear_name(image, shift.to);
        printf("%5.0f rpm   before %5.1f km/h   after %5.1f km/h\n", shift.output_rpm, point.before_km_h,
               point.after_km_h);
    }
    require(tw_road_speedometer(&programmed, &fitted, 100.0, &shown), "speedometer");
    require(tw_road_numbers_to_program(&programmed, &fitted, 1.0, &numbers), "numbers to program");
    printf("  At a true 100 km/h the speedometer shows %.1f +/- %.1f km/h. Program %.0f revolutions per km.\n",
           shown.shown_km_h.value, 2.0 * shown.shown_km_h.u, numbers.rev_per_km);
}

static const char *verdict_text(tw_verdict verdict) {
    return verdict == TW_VERDICT_GO ? "GO" : verdict == TW_VERDICT_NO_GO ? "NO-GO" : "NOT PROVEN";
}

/* Which pack governs each gear at the rated torque and the greatest line pressure, at stall. */
static void print_capacity(const tw_flash_image *image, const tw_train *train, uint8_t gears) {
    tw_element_pack packs[TW_MAX_ELEMENTS];
    tw_ratings ratings;
    tw_linings linings;
    tw_fluid fluid;
    tw_duty duty;
    uint8_t pack_count = 0;

    require(tw_flash_pack_count(image, &pack_count), "packs");
    for (uint8_t i = 0; i < pack_count; i++) require(tw_flash_pack(image, i, &packs[i]), "pack");
    require(tw_flash_ratings(image, &ratings), "ratings");
    require(tw_flash_linings(image, &linings), "linings");
    require(tw_flash_fluid(image, &fluid), "fluid");

    memset(&duty, 0, sizeof duty); /* turbine speed 0: stall */
    duty.pressure_kpa.value = ratings.line_max_kpa;
    duty.pressure_kpa.u = 20.0;
    duty.friction = linings.holding;
    duty.geometry_u_rel = linings.geometry_u_rel;
    require(tw_fluid_density(&fluid, 90.0, &duty.oil_density_kg_m3), "density");
    require(tw_judge_conformance(0.95, &duty.rule), "rule");

    printf("\n3. Capacity at %.0f kPa against the rated %.0f N m at the turbine (%.0f N m in reverse)\n",
           ratings.line_max_kpa, ratings.turbine_nm, ratings.reverse_turbine_nm);
    for (uint8_t i = 0; i < gears; i++) {
        tw_state state;
        tw_gear_review review;
        tw_text name;
        const tw_element_margin *weakest;
        solve_gear(image, train, i, &state);
        duty.turbine_torque_nm.value = state.ratio.num < 0 ? ratings.reverse_turbine_nm : ratings.turbine_nm;
        require(tw_clutch_review(&state, packs, pack_count, &duty, &review), "capacity");
        weakest = &review.margins[review.governing];
        require(tw_flash_element_name(image, weakest->element, &name), "element name");
        print_gear_name(image, i);
        printf("%.*s governs: %4.0f of %4.0f N m, margin %.3f, just holds at %4.0f kPa, chance %.3f, %s\n",
               (int)name.length, name.start, weakest->capacity_nm, weakest->need_nm, weakest->margin,
               weakest->pressure_needed.strong_spring_kpa, weakest->chance, verdict_text(weakest->verdict));
    }
    printf("  A computed capacity is not a rating: the maker's ratings stand.\n");
    print_caution(TW_HAZARD_RAISED_PRESSURE);
    print_caution(TW_HAZARD_STALL_HEAT);
}

static void print_fluid(const tw_flash_image *image) {
    tw_fill fill;
    tw_fluid fluid;
    tw_level_check check;
    tw_rule rule;
    tw_adjustment now;

    require(tw_flash_fill(image, &fill), "fill");
    require(tw_flash_fluid(image, &fluid), "fluid");
    check.temp_c.value = FLUID_TEMP_C;
    check.temp_c.u = FLUID_TEMP_U_C;
    check.level_mm.value = FLUID_LEVEL_MM;
    check.level_mm.u = FLUID_LEVEL_U_MM;
    check.area_scale.value = 1.0; /* the sump is as the table says */
    check.area_scale.u = 0.02;
    require(tw_judge_conformance(0.95, &rule), "rule");
    require(tw_fluid_adjust_fill(&fill, &fluid, &check, &rule, &now), "fluid level");

    printf("\n4. Fluid at %.0f C, %.1f mm from the overflow edge; the level may be checked from %.0f to %.0f C\n",
           FLUID_TEMP_C, FLUID_LEVEL_MM, fill.check_low_c, fill.check_high_c);
    printf("  %s now: %.0f mL (+/- %.0f). Fill as it is: %s.\n", now.add_now_ml.value >= 0.0 ? "Add" : "Drain",
           now.add_now_ml.value >= 0.0 ? now.add_now_ml.value : -now.add_now_ml.value, 2.0 * now.add_now_ml.u,
           verdict_text(now.excess_ml.verdict));
    print_caution(TW_HAZARD_HOT_FLUID);
    print_caution(TW_HAZARD_ROLL_AWAY);
}

int main(void) {
    tw_flash_image image;
    tw_train train;
    tw_text title;
    uint8_t gears = 0;

    require(tw_flash_open(unit_image, unit_image_bytes, &image), "flash image");
    require(tw_flash_title(&image, &title), "title");
    require(tw_flash_train(&image, &train), "train");
    require(tw_flash_gear_count(&image, &gears), "gears");
    print_text(title);
    printf(" (%u bytes of flash)\n", (unsigned)unit_image_bytes);

    print_gear_table(&image, &train, gears);
    print_shift_points(&image);
    print_capacity(&image, &train, gears);
    print_fluid(&image);
    return 0;
}
