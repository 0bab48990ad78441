/* Cards and hazards are complete texts; what does not exist, and a null pointer, is refused and writes nothing. */
#include "trainwright.h"
#include <stdio.h>
#include <string.h>

static int failed(const char *what, size_t position) {
    printf("%s at %lu\n", what, (unsigned long)position);
    return 1;
}

static bool filled(tw_text text) { return text.start != NULL && text.length > 0 && memchr(text.start, 0, text.length) == NULL; }

static int cards(void) {
    tw_card_text card;
    memset(&card, 0, sizeof card);
    if (tw_card_count() == 0) return failed("no cards", 0);
    for (size_t position = 0; position < tw_card_count(); position++) {
        if (tw_card_at(position, &card) != TW_STATUS_OK) return failed("no card", position);
        if (!filled(card.id) || !filled(card.purpose) || !filled(card.equation) || !filled(card.range) ||
            !filled(card.source) || !filled(card.locator)) {
            return failed("an empty text", position);
        }
        for (size_t i = 0; i < card.symbols; i++) {
            tw_symbol_text symbol;
            if (tw_card_symbol_at(position, i, &symbol) != TW_STATUS_OK) return failed("no symbol", position);
            if (!filled(symbol.symbol) || !filled(symbol.meaning) || !filled(symbol.unit)) return failed("an empty symbol", position);
        }
    }
    tw_card_text untouched = card;
    tw_symbol_text symbol;
    if (tw_card_at(tw_card_count(), &untouched) != TW_STATUS_COUNT) return failed("a card beyond the last", tw_card_count());
    if (memcmp(&untouched, &card, sizeof card) != 0) return failed("a refusal wrote", tw_card_count());
    if (tw_card_symbol_at(0, 1000, &symbol) != TW_STATUS_COUNT) return failed("a symbol beyond the last", 0);
    if (tw_card_at(0, NULL) != TW_STATUS_NULL) return failed("a null pointer taken", 0);
    return 0;
}

static int hazards(void) {
    tw_hazard_text text;
    for (int32_t hazard = TW_HAZARD_ROLL_AWAY; hazard <= TW_HAZARD_RAISED_PRESSURE; hazard++) {
        if (tw_hazard_caution(hazard, &text) != TW_STATUS_OK) return failed("no hazard", (size_t)hazard);
        if (!filled(text.title) || !filled(text.caution)) return failed("an empty hazard", (size_t)hazard);
    }
    if (tw_hazard_caution(0, &text) != TW_STATUS_OUT_OF_RANGE) return failed("hazard 0 taken", 0);
    if (tw_hazard_caution(-1, &text) != TW_STATUS_OUT_OF_RANGE) return failed("hazard -1 taken", 0);
    return 0;
}

static int explanations(void) {
    const tw_named_value values[] = {
        {"inner_radius_mm", 56}, {"outer_radius_mm", 78}, {"result", 67},
    };
    const char *id = "clutch.mean_radius_worn_mm";
    char text[1024], small[1024];
    size_t length = 0, again = 0;
    if (tw_card_explain(id, values, 3, text, 0, &length) != TW_STATUS_OK || length == 0) return failed("no length", length);
    if (tw_card_explain(id, values, 3, text, length + 1, &again) != TW_STATUS_OK) return failed("an exact fit refused", length);
    if (again != length || strlen(text) != length) return failed("another length", again);
    if (strstr(text, "  r_i  inner radius: 56 mm\n") == NULL || strstr(text, "Result: r_m = 67 mm\n") == NULL) {
        return failed(text, length);
    }
    memset(small, 'x', sizeof small);
    again = 7;
    if (tw_card_explain(id, values, 3, small, length, &again) != TW_STATUS_COUNT) return failed("no room, and answered", length);
    if (again != 7 || small[0] != 'x') return failed("a refusal wrote", again);
    if (tw_card_explain("clutch.nothing", values, 3, text, sizeof text, &length) != TW_STATUS_MISSING) {
        return failed("no such card, and answered", 0);
    }
    const char bad[] = {(char)0xff, 0};
    if (tw_card_explain(bad, values, 3, text, sizeof text, &length) != TW_STATUS_TEXT) return failed("not UTF-8, and answered", 0);

    const tw_reading spare_nm = {37.5, 70};
    const tw_limits at_least_0 = {0, 1e300 * 1e10};
    tw_rule rule;
    tw_judgment judgment;
    tw_budget budget;
    memset(&budget, 0, sizeof budget);
    if (tw_judge_conformance(0.95, &rule) != TW_STATUS_OK) return failed("no rule", 0);
    if (tw_judge_judge(&spare_nm, &at_least_0, &rule, &judgment) != TW_STATUS_OK) return failed("no judgment", 0);
    if (tw_judge_explain(&judgment, &budget, NULL, 0, "N m", text, sizeof text, &length) != TW_STATUS_OK) {
        return failed("no words for a judgment", 0);
    }
    if (strstr(text, "Judged: 37.5 N m, standard uncertainty 70 N m, against at least 0 N m.") != text) return failed(text, length);
    const tw_input input = {1, 70, 1e300 * 1e10};
    const char *const names[] = {"torque"};
    if (tw_judge_combine(&input, 1, &budget) != TW_STATUS_OK) return failed("no budget", 0);
    if (tw_judge_explain(&judgment, &budget, names, 1, "N m", text, sizeof text, &length) != TW_STATUS_OK ||
        strstr(text, "torque: sensitivity 1, its standard uncertainty 70 brings 70 N m, 100 % of the variance") == NULL) {
        return failed(text, length);
    }
    return 0;
}

static int null_pointers(void) {
    const tw_fluid fluid = {843, 7.8e-4, 27.4, 5.6};
    double out = 1;
    const tw_status refused[] = {
        tw_fluid_density(NULL, 20, &out),
        tw_fluid_density(&fluid, 20, NULL),
        tw_fluid_blend_viscosity(NULL, 2, &out),
        tw_fluid_from_table(NULL, NULL, 3, NULL),
        tw_fluid_level_at(NULL, &fluid, 0, 47, NULL),
        tw_fluid_check_properties(NULL),
        tw_fluid_check_fill(NULL),
    };
    for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++) {
        if (refused[i] != TW_STATUS_NULL) return failed("a null pointer taken", i);
    }
    if (out < 1 || out > 1) return failed("a null pointer wrote", 0);
    return tw_fluid_check_properties(&fluid) == TW_STATUS_OK ? 0 : failed("a good fluid refused", 0);
}

int main(void) { return cards() + hazards() + explanations() + null_pointers(); }
