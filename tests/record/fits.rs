//! Fits of a family.

use super::*;

#[test]
fn fits_that_contradict_themselves() {
    let shaft = "shaft_mm = { teal = [43.975, 44.000]";
    for (from, to, key, message, mend) in [
        (
            shaft,
            "shaft_mm = { teal = [44.325, 44.350]",
            "fit[0].shaft_mm.teal",
            "does not enter the bore of its own variant: clearance -0.310 to -0.250",
            "correct the shaft or the bore of this variant",
        ),
        (
            shaft,
            "shaft_mm = { teal = [44.030, 44.055]",
            "fit[0].shaft_mm.teal",
            "may bind in the bore of its own variant: clearance -0.015 to 0.045",
            "correct the shaft or the bore of this variant",
        ),
        (
            shaft,
            "shaft_mm = { teal = [43.075, 43.100]",
            "fit[0].shaft_mm.teal",
            "loose in the bore of its own variant: clearance 0.940 to 1.000, limit_mm 0.14",
            "correct the shaft, the bore or limit_mm",
        ),
        (
            "bush_outside_mm = [43.065, 43.090]",
            "bush_outside_mm = [42.965, 42.990]",
            "fit[5].press.bush_outside_mm",
            "even the largest, 42.99, has no interference in the smallest housing, 43",
            "exchange the two or correct one",
        ),
        (
            "housing_outside_mm = 74.0",
            "housing_outside_mm = 43.05",
            "fit[5].press.housing_outside_mm",
            "housing_outside_mm 43.05 must be above bush_outside_mm 43.09",
            "exchange the two or correct one",
        ),
        (
            "bush_wall_mm = 1.5",
            "bush_wall_mm = 2.5",
            "fit[5].press.bush_wall_mm",
            "leaves a bore near 38.013 in place, but bore_mm of teal is 40.02 to 40.05",
            "a wall of 1.489 would agree",
        ),
        (
            "young_mpa = 71000\n",
            "",
            "fit[5].press.housing_material",
            "young_mpa is missing: a press fit needs it; add it to [material]",
            "",
        ),
        (
            "housing_material = \"aluminum\"",
            "housing_material = \"aluminium\"",
            "fit[5].press.housing_material",
            "there is no material \"aluminium\"",
            "did you mean aluminum?",
        ),
        (
            "expansion_per_k = { best = 23.0e-6",
            "expansion_per_k = { best = 23.0",
            "material.aluminum.expansion_per_k.best",
            "takes a number above 0, at most 0.0001",
            "Best value.",
        ),
    ] {
        // The evidence states the sizes of the journal too, and then disagrees as well.
        let problems = Problems(family_with(from, to));
        let told = |problem: &&Problem| problem.key == key && problem.message == message && problem.mend == mend;
        assert!(problems.errors().any(|problem| told(&problem)), "{key}: {message}\n{problems}");
    }
    let press =
        family_with("kind = \"locating\"\nshaft = \"thrust_race\"", "kind = \"press\"\nshaft = \"thrust_race\"");
    let of_press: Vec<_> = press.iter().filter(|problem| problem.message.starts_with("a press fit with")).collect();
    assert_eq!(of_press.len(), 3, "one for each variant: {press:?}");
    assert_eq!(of_press[0].key, "fit[3].shaft_mm.teal");
    assert_eq!(of_press[0].message, "a press fit with clearance, 0.100 to 0.220");
    // Notes: the record can be used.
    for (from, to, key, message) in [
        (
            "limit_mm = 0.14",
            "limit_mm = 0.09",
            "fit[0].limit_mm",
            "0.09 allows less than new parts have, 0.040 to 0.100",
        ),
        (
            "bush_outside_mm = [43.065, 43.090]",
            "bush_outside_mm = [43.020, 43.090]",
            "fit[5].press.bush_outside_mm",
            "the smallest, 43.02, is loose in the largest housing, 43.025",
        ),
    ] {
        let problems = Problems(family_with(from, to));
        assert!(problems.errors().next().is_none(), "{problems}");
        assert!(problems.0.iter().all(|problem| (problem.key.as_str(), problem.message.as_str()) == (key, message)));
    }
    // A register may be a light push fit.
    assert!(family_with("shaft_mm = { teal = [117.940, 117.965]", "shaft_mm = { teal = [117.960, 117.985]").is_empty());
}

#[test]
fn fits_as_the_fit_chapter_takes_them() {
    let family = Family::from_toml("family.toml", &demo("family.toml")).unwrap();
    let journal = family.fit("output_journal_in_support").unwrap();
    let loose = journal.clearance("teal", "wren").unwrap();
    assert_eq!(loose.fit_class, FitClass::Loose);
    assert_relative_eq!(loose.clearance_mm.lower, 0.39, epsilon = 1e-9);
    assert_eq!(family.expansions_of(journal).map(|expansion| expansion.unwrap().value), [11.5e-6, 23e-6]);
    let bush = family.fit("case_bush").unwrap();
    let bore = toleranced(bush.bore_limits("teal").unwrap(), Spread::RECTANGULAR).unwrap();
    let pressed = family.pressed_bushing(bush, bore, Spread::RECTANGULAR).unwrap();
    assert_relative_eq!(pressed.bushing_at(20.0).unwrap().interference_mm, 0.065, epsilon = 1e-9);
    assert_relative_eq!(pressed.let_go_c().unwrap().value, 151.6, epsilon = 0.05);
    for (error, says) in [
        (family.fit("case_bushing").unwrap_err(), "the record has no fit of this name"),
        (journal.clearance("blue", "wren").unwrap_err(), "the record gives none for this variant"),
        (family.pressed_bushing(journal, bore, Spread::RECTANGULAR).unwrap_err(), "no bushing is pressed"),
    ] {
        assert!(matches!(error, Error::Missing { .. }) && error.to_string().contains(says), "{error}");
    }
    let nameless = demo("family.toml").replace("bush_material = \"steel\"\n", "");
    let nameless = Family::from_toml("family.toml", &nameless).unwrap();
    let bush = nameless.fit("case_bush").unwrap();
    let error = nameless.pressed_bushing(bush, bore, Spread::RECTANGULAR).unwrap_err();
    assert_eq!(
        error.to_string(),
        "bush_material is missing: name it in the press of this fit, and its constants in [material]"
    );
}
