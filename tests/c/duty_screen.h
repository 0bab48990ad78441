/* The pass over rows: the truck of the screening vectors, and a row in C. */
#ifndef TESTS_DUTY_SCREEN_H
#define TESTS_DUTY_SCREEN_H

static void screen_holding(tw_screen_holding *holding, uint8_t element, double share) {
    const tw_capacity_line lines[] = {{9000, 0, 1200, 500}, {8000, 2e-5, 1000, 400}};
    holding->element = element;
    holding->share = share;
    holding->turns = element;
    holding->line = lines[element];
    holding->friction = 0.1;
}

static tw_status screen_truck(tw_screen_plan *plan) {
    static const double ratios[] = {3, 1, -2.5}, efficiencies[] = {0.96, 0.99, 0.95};
    static const double contacts[] = {3, 0, 5}, shares[] = {0.8, 0, 2};
    static const int8_t numbers[] = {1, 2, -1};
    tw_screen_unit unit;
    memset(&unit, 0, sizeof unit);
    for (size_t i = 0; i < 3; i++) {
        tw_screen_gear *gear = &unit.gears[i];
        gear->number = numbers[i];
        gear->ratio = ratios[i];
        gear->efficiency = efficiencies[i];
        gear->contacts_per_turn[0] = contacts[i];
        gear->sun_share[0] = shares[i];
    }
    unit.gear_count = 3;
    screen_holding(&unit.gears[0].holding[0], 0, 1);
    screen_holding(&unit.gears[1].holding[0], 0, 0.6);
    screen_holding(&unit.gears[1].holding[1], 1, 0.4);
    screen_holding(&unit.gears[2].holding[0], 1, 2.5);
    unit.gears[0].holding_count = unit.gears[2].holding_count = 1;
    unit.gears[1].holding_count = 2;
    unit.rated_input_nm = 500;
    unit.rated_output_nm = 1500;
    unit.limits = (tw_screen_limits){0.03, 50, 10, 30, 20, 120, 1.2, 30};
    unit.damage.slope = 6;
    unit.damage.reference_contacts = 1e6;
    unit.damage.reference_nm[0] = 1000;
    unit.fluid = (tw_screen_fluid){2000, 80, 10};
    const double points[][2] = {{0, 2}, {0.5, 1.5}, {0.9, 1}};
    for (size_t i = 0; i < 3; i++) {
        unit.converter.speed_ratio[i] = points[i][0];
        unit.converter.torque_ratio[i] = points[i][1];
    }
    unit.converter.count = 3;
    unit.output_rpm_per_km_h = 20;
    return tw_duty_screen_plan(&unit, plan);
}

static double screen_formed(double value) { return isnan(value) ? -1 : value; }

static tw_status screen_row(const vectors_row *row, double *out) {
    tw_screen_plan plan;
    tw_screen_row now, before;
    tw_screen_answer answer, answers[2];
    tw_screen_totals totals;
    const uint32_t given = (uint32_t)vectors_number(row, "given");
    tw_status status = screen_truck(&plan);
    if (status != TW_STATUS_OK) return status;
    now.time_s = vectors_number(row, "time_s");
    now.engine_rpm = vectors_number(row, "engine_rpm");
    now.input_rpm = vectors_number(row, "input_rpm");
    now.output_rpm = vectors_number(row, "output_rpm");
    now.engine_torque_nm = vectors_number(row, "engine_torque_nm");
    now.pressure_kpa = vectors_number(row, "pressure_kpa");
    now.temp_c = vectors_number(row, "temp_c");
    now.speed_km_h = vectors_number(row, "speed_km_h");
    now.gps_km_h = vectors_number(row, "gps_km_h");
    now.gear = vectors_number(row, "gear");
    before = now;
    before.time_s = vectors_number(row, "before_s");
    before.engine_torque_nm = vectors_number(row, "before_nm");
    status = tw_duty_screen_row(&plan, given, &now, &before, &answer);
    if (status != TW_STATUS_OK) return status;
    /* The array and the totals of the same two rows agree with the one row. */
    const tw_screen_row rows[] = {before, now};
    status = tw_duty_screen_rows(&plan, given, rows, 2, answers);
    if (status == TW_STATUS_OK) status = tw_duty_screen_totals(&plan, given, rows, 2, &totals);
    if (status != TW_STATUS_OK) return status;
    if (answers[1].flags != answer.flags || totals.rows != 2) return TW_STATUS_OTHER;
    const double values[] = {(double)answer.flags,
                             (double)answer.gear,
                             (double)answer.weakest,
                             answer.duration_s,
                             screen_formed(answer.input_torque_nm),
                             screen_formed(answer.output_torque_nm),
                             screen_formed(answer.least_margin),
                             answer.turns_at_rated,
                             screen_formed(answer.converter_loss_kw),
                             screen_formed(answer.gear_loss_kw),
                             answer.aged_s,
                             screen_formed(answer.gps_over_speed),
                             screen_formed(answer.gps_over_output)};
    memcpy(out, values, sizeof values);
    return status;
}

static tw_status screen_power(const vectors_row *row, double *out) {
    return tw_duty_screen_power(vectors_number(row, "base"), vectors_number(row, "exponent"), out);
}

#endif
