/* The duty chapter's vectors in C. */
#include <math.h>

#include "trains.h"

static double open_as_infinite(tw_fraction fraction) {
    return fraction.den == 0 ? INFINITY : (double)fraction.num / (double)fraction.den;
}

static tw_status mesh_duty(const vectors_row *row, double *out) {
    tw_train train;
    tw_state state;
    tw_mesh_duty duty;
    double last;
    tw_status status = build(row, &train, &last);
    if (status == TW_STATUS_OK) status = tw_train_solve(&train, (uint32_t)vectors_number(row, "closed"), &state);
    if (status == TW_STATUS_OK) {
        status = tw_duty_mesh_duty(&train, &state, (uint8_t)vectors_number(row, "set"), &duty);
    }
    if (status != TW_STATUS_OK) return status;
    const tw_fraction answers[] = {duty.sun.contacts,   duty.sun.torque,  duty.sun_2.contacts,  duty.sun_2.torque,
                                   duty.ring.contacts,  duty.ring.torque, duty.planet_contacts, duty.planet_2_contacts};
    for (size_t i = 0; i < 8; i++) out[i] = open_as_infinite(answers[i]);
    return status;
}

static tw_status bus_signal_of(const vectors_row *row, tw_bus_signal *signal) {
    const uint32_t number = (uint32_t)vectors_number(row, "number");
    if (number != 0) return tw_duty_bus_signal((uint8_t)vectors_number(row, "network"), number, signal);
    memset(signal, 0, sizeof *signal);
    signal->rules = (tw_bus_rules)vectors_number(row, "rules");
    signal->bits = (uint8_t)vectors_number(row, "bits");
    signal->resolution = vectors_number(row, "resolution");
    signal->offset = vectors_number(row, "offset");
    signal->lower = vectors_number(row, "lower");
    signal->upper = vectors_number(row, "upper");
    return TW_STATUS_OK;
}

static tw_status decode(const vectors_row *row, double *out) {
    tw_bus_signal signal;
    tw_bus_value value;
    tw_status status = bus_signal_of(row, &signal);
    if (status == TW_STATUS_OK) status = tw_duty_decode(&signal, (uint32_t)vectors_number(row, "raw"), &value);
    if (status != TW_STATUS_OK) return status;
    out[0] = (double)value.meaning;
    out[1] = value.value;
    return status;
}

static tw_status classify(const vectors_row *row, double *out) {
    tw_bus_signal signal;
    tw_bus_value value;
    tw_status status = bus_signal_of(row, &signal);
    if (status == TW_STATUS_OK) status = tw_duty_classify(&signal, vectors_number(row, "value"), &value);
    if (status != TW_STATUS_OK) return status;
    out[0] = (double)value.meaning;
    out[1] = value.value;
    return status;
}

static tw_status step_error(const vectors_row *row, double *out) {
    tw_bus_signal signal;
    const tw_status status = bus_signal_of(row, &signal);
    return status == TW_STATUS_OK ? tw_duty_step_error(&signal, vectors_number(row, "value"), out) : status;
}

static const vectors_test TESTS[] = {
    {"duty_mesh_duty", mesh_duty},
    {"duty_decode", decode},
    {"duty_classify", classify},
    {"duty_step_error", step_error},
};

int main(int argc, char **argv) { return vectors_main(argc, argv, TESTS, sizeof TESTS / sizeof TESTS[0]); }
