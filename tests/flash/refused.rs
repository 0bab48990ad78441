//! Lists that do not go together, damaged bytes, places that are not there.

use super::*;

#[test]
fn live_lists_that_do_not_go_together_are_refused() {
    let train = Train::new(3, 0, 1, 2).unwrap();
    let members = ["input", "output", "case"];
    let good = bare(&train, &members);
    let mut buffer = vec![0; MAX_IMAGE_BYTES];
    let gear = LiveGear::new(1, 2.0);
    let foreign = LiveGear { suspect_count: 1, ..gear };
    let too_many = LiveGear { suspect_count: 200, ..gear };
    for (live_gears, live_elements, kind) in [
        (&[gear][..], &[LiveElement::UNKNOWN][..], "COUNT"),
        (&[], &[LiveElement::UNKNOWN], "COUNT"),
        (&[gear; 13], &[], "COUNT"),
        (&[foreign], &[], "INCONSISTENT"),
        (&[too_many], &[], "INCONSISTENT"),
    ] {
        let contents = Contents { live_gears, live_elements, ..good };
        assert_eq!(flash::write(&contents, &mut buffer).unwrap_err().kind(), kind, "{live_gears:?}");
    }
    let length = flash::write(&Contents { live_gears: &[gear], ..good }, &mut buffer).unwrap();
    assert_eq!(Image::open(&buffer[..length]).unwrap().live_gears().unwrap().0[0], gear);
    let length = flash::write(&good, &mut buffer).unwrap();
    assert_eq!(Image::open(&buffer[..length]).unwrap().live_gears().unwrap_err().kind(), "MISSING");
}

#[test]
fn a_family_whose_lists_do_not_go_together_is_refused() {
    let train = Train::new(3, 0, 1, 2).unwrap();
    let members = ["input", "output", "case"];
    let limits = [Limits { lower: 1.0, upper: 2.0 }; 2];
    let good = FamilyContents {
        variants: &["early", "late"],
        prior: &[0.5, 0.5],
        parts: &["case", "shaft"],
        exchanged: &[0.1, 0.1],
        mark_names: &["port"],
        marks: &[PartMark { minutes: 1.0, part: 0 }],
        mark_chances: &[0.1, 0.9],
        size_names: &["journal"],
        sizes: &[PartSize { minutes: 5.0, u_mm: 0.002, part: 1 }],
        size_limits_mm: &limits,
        fit_names: &["journal_in_case"],
        fits: &[PartFit {
            wanted_mm: Limits { lower: 0.0, upper: 0.1 },
            shaft: 1,
            bore: 0,
            shaft_size: 0,
            bore_size: NO_SIZE,
        }],
        shaft_mm: &limits,
        bore_mm: &limits,
    };
    let foreign_mark = [PartMark { minutes: 1.0, part: 2 }];
    let foreign_size = [PartSize { part: 7, ..good.sizes[0] }];
    let foreign_fit = [PartFit { bore: 2, ..good.fits[0] }];
    let no_such_size = [PartFit { shaft_size: 1, ..good.fits[0] }];
    let many = vec!["v"; 17];
    let mut buffer = vec![0; MAX_IMAGE_BYTES];
    let mut written =
        |family: FamilyContents<'_>| flash::write(&Contents { family, ..bare(&train, &members) }, &mut buffer);
    assert!(written(good).is_ok());
    for (family, kind) in [
        (FamilyContents { prior: &[1.0], ..good }, "COUNT"),
        (FamilyContents { exchanged: &[], ..good }, "COUNT"),
        (FamilyContents { mark_chances: &[0.1], ..good }, "COUNT"),
        (FamilyContents { size_limits_mm: &limits[..1], ..good }, "COUNT"),
        (FamilyContents { bore_mm: &limits[..1], ..good }, "COUNT"),
        (FamilyContents { fit_names: &[], ..good }, "COUNT"),
        (FamilyContents { variants: &many, ..good }, "COUNT"),
        (FamilyContents { marks: &foreign_mark, ..good }, "INCONSISTENT"),
        (FamilyContents { sizes: &foreign_size, ..good }, "INCONSISTENT"),
        (FamilyContents { fits: &foreign_fit, ..good }, "INCONSISTENT"),
        (FamilyContents { fits: &no_such_size, ..good }, "INCONSISTENT"),
        (FamilyContents { parts: &["case"], exchanged: &[0.1], ..FamilyContents::default() }, "INCONSISTENT"),
    ] {
        assert_eq!(written(family).unwrap_err().kind(), kind);
    }
}

#[test]
fn a_place_beyond_the_list_is_refused() {
    let image = Image::open(&WREN).unwrap();
    let refusals = [
        image.member_name(9).map(drop),
        image.element_name(6).map(drop),
        image.gear_name(11).map(drop),
        image.gear(255).map(drop),
        image.shift(7).map(drop),
    ];
    for refusal in refusals {
        assert_eq!(refusal.unwrap_err().kind(), "OUT_OF_RANGE");
    }
}

#[test]
fn every_prefix_is_refused() {
    for length in 0..WREN.len() {
        assert!(Image::open(&WREN[..length]).is_err(), "{length} bytes of {}", WREN.len());
    }
}

#[test]
fn every_flipped_bit_is_refused() {
    for byte in 0..WREN.len() {
        for bit in 0..8 {
            let mut damaged = WREN.clone();
            damaged[byte] ^= 1 << bit;
            assert!(Image::open(&damaged).is_err(), "byte {byte} bit {bit}");
        }
    }
}

#[test]
fn another_version_is_named() {
    let mut later = WREN.clone();
    later[4] = 4;
    let error = Image::open(&later).unwrap_err();
    assert!(matches!(error, Error::OutOfRange { value: 4.0, high, .. } if high == f64::from(IMAGE_VERSION)), "{error}");
}

#[test]
fn contents_that_do_not_fit_one_another_are_refused() {
    let train = Train::new(3, 0, 1, 2).unwrap();
    let members = ["input", "output", "case"];
    let good = bare(&train, &members);
    let long = "x".repeat(MAX_NAME_BYTES + 1);
    let no_such_gear = [flash::Shift { from: 0, to: 1, output_rpm: 900.0 }];
    let no_such_element = [flash::Gear { closed: 1, one_way: 0, efficiency: 0.0 }];
    let mut buffer = vec![0; MAX_IMAGE_BYTES];
    assert!(flash::write(&good, &mut buffer).is_ok());
    let bad = [
        (Contents { members: &members[..2], ..good }, "COUNT"),
        (Contents { elements: &["C1"], ..good }, "COUNT"),
        (Contents { gear_names: &["1"], ..good }, "COUNT"),
        (Contents { title: &long, ..good }, "COUNT"),
        (Contents { shifts: &no_such_gear, ..good }, "INCONSISTENT"),
        (Contents { gears: &no_such_element, gear_names: &["1"], ..good }, "INCONSISTENT"),
    ];
    for (contents, kind) in bad {
        assert_eq!(flash::write(&contents, &mut buffer).unwrap_err().kind(), kind);
    }
    assert_eq!(flash::write(&good, &mut [0; 20]).unwrap_err().kind(), "INCONSISTENT");
}
