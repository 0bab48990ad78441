/* A tool for the bench: which variant a unit is, what to look at next, and how two measured parts fit, from the flash image of
 * its family and without a heap. `unit_image` is the image, put into flash by the linker (see flash_image.rs beside this
 * file). */
#include "trainwright.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

extern const unsigned char unit_image[];
extern const size_t unit_image_bytes;

/* Room for a family with as many variants and parts; an image may hold up to TW_MAX_IMAGE_VARIANTS and TW_MAX_IMAGE_PARTS. */
enum { VARIANTS = 4, PARTS = 24 };

/* What the technician types in: marks by name, and sizes in mm as the instrument shows them. */
static const struct {
    const char *name;
    bool seen;
} MARKS[] = {{"cooler_port_m18", true}, {"extension_bolts_8", false}, {"output_sensor_left", true}};
static const struct {
    const char *name;
    double mm;
} SIZES[] = {{"sump_depth", 62.1}, {"output_rear_journal", 43.988}, {"output_rear_bore", 44.407}, {"output_pilot_bore", 32.281}};
enum { MARKS_FOUND = sizeof MARKS / sizeof MARKS[0], SIZES_FOUND = sizeof SIZES / sizeof SIZES[0] };

/* The unit as it is known so far. */
typedef struct bench {
    tw_flash_image image;
    tw_family_counts family;
    double prior[VARIANTS], exchanged[PARTS], ln_likelihood[PARTS * VARIANTS];
    bool looked_at[PARTS], mark_made[TW_MAX_IMAGE_MARKS], size_made[TW_MAX_IMAGE_SIZES];
    tw_reading reading[TW_MAX_IMAGE_SIZES];
    tw_evidence evidence;
    tw_variant_finding variants[VARIANTS];
    tw_weighed weighed;
    tw_rule rule;
} bench;

static void require(tw_status status, const char *what) {
    if (status < 0) {
        printf("%s: %s\n", what, tw_status_text(status));
        exit(1);
    }
}

static void print_text(tw_text text, int width) { printf("%-*.*s", width, (int)text.length, text.start); }

static bool is(tw_text text, const char *name) {
    return strlen(name) == text.length && memcmp(name, text.start, text.length) == 0;
}

/* The list that a part's looks are added to. */
static double *row_of(bench *at, uint8_t part) { return &at->ln_likelihood[part * at->family.variants]; }

static void open_family(bench *at) {
    memset(at, 0, sizeof *at);
    require(tw_flash_open(unit_image, unit_image_bytes, &at->image), "flash image");
    require(tw_flash_family(&at->image, &at->family), "family");
    if (at->family.variants > VARIANTS || at->family.parts > PARTS) {
        printf("this tool has room for %d variants and %d parts\n", VARIANTS, PARTS);
        exit(1);
    }
    for (uint8_t i = 0; i < at->family.variants; i++) require(tw_flash_prior(&at->image, i, &at->prior[i]), "prior");
    for (uint8_t i = 0; i < at->family.parts; i++) require(tw_flash_exchanged(&at->image, i, &at->exchanged[i]), "part");
    require(tw_judge_stated_chances(0.95, 0.05, &at->rule), "rule");
    at->evidence.prior = at->prior;
    at->evidence.exchanged = at->exchanged;
    at->evidence.ln_likelihood = at->ln_likelihood;
    at->evidence.variants = at->family.variants;
    at->evidence.parts = at->family.parts;
}

static void mark_chances(const bench *at, uint8_t mark, double *chance) {
    for (uint8_t i = 0; i < at->family.variants; i++) {
        require(tw_flash_mark_chance(&at->image, mark, i, &chance[i]), "chance of a mark");
    }
}

static void size_limits(const bench *at, uint8_t size, tw_limits *limits) {
    for (uint8_t i = 0; i < at->family.variants; i++) {
        require(tw_flash_size_limits(&at->image, size, i, &limits[i]), "limits of a size");
    }
}

static void add_marks(bench *at) {
    for (uint8_t i = 0; i < at->family.marks; i++) {
        tw_text name;
        tw_part_mark mark;
        double chance[VARIANTS];
        require(tw_flash_mark_name(&at->image, i, &name), "mark");
        for (int found = 0; found < (int)MARKS_FOUND; found++) {
            if (!is(name, MARKS[found].name)) continue;
            require(tw_flash_mark(&at->image, i, &mark), "mark");
            mark_chances(at, i, chance);
            require(tw_identify_add_seen(chance, at->family.variants, MARKS[found].seen, row_of(at, mark.part)), "mark");
            at->looked_at[mark.part] = at->mark_made[i] = true;
        }
    }
}

static void add_size(bench *at, uint8_t index, double mm) {
    tw_part_size size;
    tw_limits limits[VARIANTS];
    tw_nearest nearest;
    tw_judgment judgment;
    require(tw_flash_size(&at->image, index, &size), "size");
    size_limits(at, index, limits);
    at->reading[index].value = mm;
    at->reading[index].u = size.u_mm;
    require(tw_identify_add_measured(limits, at->family.variants, &at->reading[index], row_of(at, size.part), &nearest),
            "size");
    require(tw_judge_judge(&at->reading[index], &limits[nearest.variant], &at->rule, &judgment), "size");
    if (judgment.verdict == TW_VERDICT_NO_GO) at->evidence.unexplained++; /* worn, mismeasured, or not of this family */
    at->looked_at[size.part] = at->size_made[index] = true;
}

static void add_sizes(bench *at) {
    for (uint8_t i = 0; i < at->family.sizes; i++) {
        tw_text name;
        require(tw_flash_size_name(&at->image, i, &name), "size");
        for (int found = 0; found < (int)SIZES_FOUND; found++) {
            if (is(name, SIZES[found].name)) add_size(at, i, SIZES[found].mm);
        }
    }
}

static void print_variants(bench *at) {
    require(tw_identify_weigh(&at->evidence, at->variants, &at->weighed), "weighing");
    for (uint8_t i = 0; i < at->family.variants; i++) {
        tw_text name;
        require(tw_flash_variant_name(&at->image, i, &name), "variant");
        printf("  ");
        print_text(name, 8);
        printf("%.4f\n", at->variants[i].chance);
    }
}

/* Where the parts came from, and what that comes to. */
static void print_parts(const bench *at) {
    static const char *const OUTCOMES[] = {"not settled", "one variant", "mixed", "unexplained"};
    tw_part_finding findings[PARTS];
    tw_conclusion conclusion;
    size_t count = 0;
    for (uint8_t part = 0; part < at->family.parts; part++) {
        tw_origin origins[VARIANTS];
        tw_part_finding *const finding = &findings[count];
        tw_text name, origin;
        if (!at->looked_at[part]) continue;
        require(tw_identify_part(&at->evidence, at->variants, part, origins, finding), "part");
        require(tw_flash_part_name(&at->image, part, &name), "part");
        require(tw_flash_variant_name(&at->image, (uint8_t)finding->origin, &origin), "variant");
        printf("  ");
        print_text(name, 16);
        print_text(origin, 8);
        printf("%.4f   foreign to the unit %.4f\n", finding->chance, finding->foreign);
        count++;
    }
    require(tw_identify_conclude(&at->weighed, findings, count, &at->rule, &conclusion), "verdict");
    printf("  verdict: %s\n", OUTCOMES[conclusion.outcome]);
}

/* What each look that was not made yet would tell. */
static void print_next_looks(const bench *at) {
    for (uint8_t i = 0; i < at->family.marks + at->family.sizes; i++) {
        const bool is_mark = i < at->family.marks;
        const uint8_t index = (uint8_t)(is_mark ? i : i - at->family.marks);
        tw_origin origins[VARIANTS];
        tw_part_finding finding;
        tw_standing standing;
        tw_worth worth;
        tw_text name;
        if (is_mark ? at->mark_made[index] : at->size_made[index]) continue;
        standing.variants = at->variants;
        standing.origins = origins;
        standing.count = at->family.variants;
        standing.rule = at->rule;
        if (is_mark) {
            double chance[VARIANTS];
            tw_part_mark mark;
            require(tw_flash_mark_name(&at->image, index, &name), "mark");
            require(tw_flash_mark(&at->image, index, &mark), "mark");
            require(tw_identify_part(&at->evidence, at->variants, mark.part, origins, &finding), "part");
            mark_chances(at, index, chance);
            require(tw_identify_mark_worth(&standing, chance, mark.minutes, &worth), "worth");
        } else {
            tw_limits limits[VARIANTS];
            tw_part_size size;
            require(tw_flash_size_name(&at->image, index, &name), "size");
            require(tw_flash_size(&at->image, index, &size), "size");
            require(tw_identify_part(&at->evidence, at->variants, size.part, origins, &finding), "part");
            size_limits(at, index, limits);
            require(tw_identify_size_worth(&standing, limits, size.u_mm, size.minutes, &worth), "worth");
        }
        printf("  ");
        print_text(name, 22);
        printf("%.4f bit/min, settles the variant with a chance of %.3f\n", worth.bits_per_minute, worth.settles);
    }
}

/* Every fit of which both sides were measured. */
static void print_fits(const bench *at) {
    for (uint8_t i = 0; i < at->family.fits; i++) {
        tw_part_fit fit;
        tw_measured_clearance measured;
        tw_text name;
        require(tw_flash_fit(&at->image, i, &fit), "fit");
        if (fit.shaft_size == TW_NO_SIZE || fit.bore_size == TW_NO_SIZE) continue;
        if (!at->size_made[fit.shaft_size] || !at->size_made[fit.bore_size]) continue;
        require(tw_flash_fit_name(&at->image, i, &name), "fit");
        require(tw_fit_measured(&at->reading[fit.shaft_size], &at->reading[fit.bore_size], &fit.wanted_mm, &at->rule,
                                &measured),
                "fit");
        printf("  ");
        print_text(name, 28);
        printf("clearance %.3f mm (u %.4f), limit %.2f: %s\n", measured.clearance_mm.value, measured.clearance_mm.u,
               fit.wanted_mm.upper,
               measured.judgment.verdict == TW_VERDICT_GO      ? "GO"
               : measured.judgment.verdict == TW_VERDICT_NO_GO ? "NO-GO"
                                                               : "NOT PROVEN");
    }
}

int main(void) {
    static bench at;
    tw_text title;
    open_family(&at);
    require(tw_flash_title(&at.image, &title), "title");
    print_text(title, 0);
    printf(" (%u bytes of flash)\n", (unsigned)unit_image_bytes);

    add_marks(&at);
    printf("\n1. After %d marks\n", (int)MARKS_FOUND);
    print_variants(&at);
    printf("\n2. What a further look would tell\n");
    print_next_looks(&at);

    add_sizes(&at);
    printf("\n3. After %d sizes as well\n", (int)SIZES_FOUND);
    print_variants(&at);
    printf("\n4. Where the parts came from\n");
    print_parts(&at);
    printf("\n5. Fits of measured parts\n");
    print_fits(&at);
    printf("\nNot checked: parts that nobody looked at; wear and roundness away from the place that was measured.\n");
    return 0;
}
