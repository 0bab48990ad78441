/* The tire chapter's vectors in C. */
#include "vectors.h"

static double number(const vectors_row *row, const char *column) { return vectors_number(row, column); }

static tw_status parsed(const vectors_row *row, tw_tire *tire) {
    const char *text = vectors_text(row, "text");
    return tw_tire_parse(text, strlen(text), tire);
}

static double speed_of(tw_speed_symbol symbol) {
    double km_h = 0.0;
    tw_tire_symbol_km_h(symbol, &km_h);
    return km_h;
}

/* A number that names nothing is refused wherever C can put one. */
static int refuses_junk(tw_tire tire) {
    double answer = 0.0;
    uint16_t plies = 0;
    tw_tire other;
    if (tw_tire_symbol_km_h(200, &answer) != TW_STATUS_OUT_OF_RANGE) return 0;
    if (tw_tire_ply_rating(12, &plies) != TW_STATUS_OUT_OF_RANGE) return 0;
    if (tw_tire_metric(6, 235.0, 80.0, 17.0, &other) != TW_STATUS_OUT_OF_RANGE) return 0;
    if (tw_tire_metric(TW_TIRE_SERVICE_LIGHT_TRUCK, 235.0, 80.0, 17.0, &other) != TW_STATUS_OK) return 0;
    if (tw_tire_regulation_diameter(NULL, NULL) != TW_STATUS_NULL) return 0;
    if (tw_tire_geometric_diameter_mm(NULL, &answer) != TW_STATUS_NULL) return 0;
    tire.kind = 99;
    return tw_tire_geometric_diameter_mm(&tire, &answer) == TW_STATUS_INCONSISTENT;
}

static tw_status parse(const vectors_row *row, double *out) {
    tw_tire tire;
    const tw_status status = parsed(row, &tire);
    if (status < 0) return status;
    const double fields[] = {
        (double)tire.kind, (double)tire.service, (double)tire.plies, tire.width_mm, tire.aspect_pct, tire.diameter_in,
        tire.width_in, tire.rim_in, (double)tire.load_range, (double)tire.load_index, (double)tire.load_index_dual,
        speed_of(tire.speed_symbol),
        (tire.extra_load ? 1.0 : 0.0) + (tire.run_flat ? 2.0 : 0.0) + (tire.mud_snow ? 4.0 : 0.0) +
            (tire.above_symbol ? 8.0 : 0.0),
    };
    memcpy(out, fields, sizeof fields);

    tw_designation written;
    tw_tire again;
    if (tw_tire_text(&tire, &written) != TW_STATUS_OK ||
        tw_tire_parse(written.text, strlen(written.text), &again) != TW_STATUS_OK || again.rim_in != tire.rim_in ||
        again.load_range != tire.load_range || again.speed_in_size != tire.speed_in_size) {
        vectors_fail(row, "canonical text does not read back:", written.text);
    }
    if (!refuses_junk(tire)) vectors_fail(row, "took a number that names nothing:", written.text);
    return status;
}

static tw_status parse_lenient(const vectors_row *row, double *out) {
    const char *text = vectors_text(row, "text");
    tw_tire tire;
    const tw_status status = tw_tire_parse_lenient(text, strlen(text), &tire);
    if (status < 0) return status;
    out[0] = tire.width_mm;
    out[1] = tire.aspect_pct;
    out[2] = tire.rim_in;
    out[3] = tire.plies_assumed ? 1.0 : 0.0;
    return status;
}

static tw_status regulation_diameter(const vectors_row *row, double *out) {
    tw_tire tire;
    tw_regulation_diameter size;
    tw_status status = parsed(row, &tire);
    if (status >= 0) status = tw_tire_regulation_diameter(&tire, &size);
    if (status < 0) return status;
    out[0] = size.diameter_mm;
    out[1] = size.rim_mm;
    out[2] = size.section_height_mm;
    out[3] = (double)size.basis;
    return status;
}

static tw_status geometric_diameter_mm(const vectors_row *row, double *out) {
    tw_tire tire;
    const tw_status status = parsed(row, &tire);
    return status < 0 ? status : tw_tire_geometric_diameter_mm(&tire, &out[0]);
}

static tw_status load_index_kg(const vectors_row *row, double *out) {
    return tw_tire_load_index_kg((uint16_t)number(row, "load_index"), &out[0]);
}

static tw_status load_index_lb(const vectors_row *row, double *out) {
    return tw_tire_load_index_lb((uint16_t)number(row, "load_index"), &out[0]);
}

static tw_status symbol_km_h(const vectors_row *row, double *out) {
    const char *letters = vectors_text(row, "letters");
    tw_speed_symbol symbol;
    const tw_status status = tw_tire_from_letters(letters, strlen(letters), &symbol);
    return status < 0 ? status : tw_tire_symbol_km_h(symbol, &out[0]);
}

static tw_reading reading(const vectors_row *row, const char *name) {
    char u_name[64];
    snprintf(u_name, sizeof u_name, "u_%s", name);
    const tw_reading answer = {number(row, name), number(row, u_name)};
    return answer;
}

static tw_status rolled(tw_status status, const tw_rolling *rolling, double *out) {
    if (status < 0) return status;
    out[0] = rolling->circumference_mm.value;
    out[1] = rolling->circumference_mm.u;
    out[2] = rolling->radius_mm.value;
    out[3] = rolling->rev_per_km.value;
    out[4] = rolling->rev_per_km.u;
    out[5] = rolling->rev_per_mile.value;
    return status;
}

static tw_status rolling_by_factor(const vectors_row *row, double *out) {
    const tw_reading factor = reading(row, "factor");
    tw_rolling rolling;
    return rolled(tw_tire_rolling_by_factor(number(row, "diameter_mm"), &factor, &rolling), &rolling, out);
}

static tw_status rolling_by_share(const vectors_row *row, double *out) {
    const tw_reading share = reading(row, "share");
    tw_rolling rolling;
    return rolled(tw_tire_rolling_by_share(number(row, "diameter_mm"), &share, &rolling), &rolling, out);
}

static tw_status rolling_by_count(const vectors_row *row, double *out) {
    const tw_reading distance_m = reading(row, "distance_m");
    const tw_reading revolutions = reading(row, "revolutions");
    tw_rolling rolling;
    return rolled(tw_tire_rolling_by_count(&distance_m, &revolutions, &rolling), &rolling, out);
}

static tw_status radii(const vectors_row *row, double *out) {
    const tw_reading share = {number(row, "share"), 0.0};
    const double diameter_mm = number(row, "diameter_mm");
    tw_rolling rolling;
    tw_wheel_radii answer;
    tw_status status = tw_tire_rolling_by_share(diameter_mm, &share, &rolling);
    if (status >= 0) status = tw_tire_radii(diameter_mm, number(row, "static_over_diameter"), &rolling, &answer);
    if (status < 0) return status;
    out[0] = answer.free_mm;
    out[1] = answer.static_loaded_mm;
    out[2] = answer.effective_mm;
    return status;
}

static const vectors_test TESTS[] = {
    {"tire_parse", parse},
    {"tire_parse_lenient", parse_lenient},
    {"tire_regulation_diameter", regulation_diameter},
    {"tire_geometric_diameter_mm", geometric_diameter_mm},
    {"tire_load_index_kg", load_index_kg},
    {"tire_load_index_lb", load_index_lb},
    {"tire_symbol_km_h", symbol_km_h},
    {"tire_rolling_by_factor", rolling_by_factor},
    {"tire_rolling_by_share", rolling_by_share},
    {"tire_rolling_by_count", rolling_by_count},
    {"tire_radii", radii},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
