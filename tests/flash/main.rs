//! The flash image: round trips, and every way in which it can be damaged.

mod refused;

use std::fs;
use std::sync::LazyLock;

use proptest::prelude::*;
use trainwright::Error;
use trainwright::flash::{
    self, Contents, FamilyContents, IMAGE_VERSION, Image, MAX_IMAGE_BYTES, MAX_NAME_BYTES, NO_SIZE, PartFit, PartMark,
    PartSize,
};
use trainwright::judge::Limits;
use trainwright::live::{LiveElement, LiveGear};
use trainwright::record::{Family, Fleet, Fluids, Installed, Instruments, Record};
use trainwright::train::{Load, Train};

fn demo<T: Record>(name: &str) -> T {
    let path = format!("{}/python/trainwright/demo/{name}", env!("CARGO_MANIFEST_DIR"));
    T::from_toml(name, &fs::read_to_string(path).unwrap()).unwrap()
}

static INSTRUMENTS: LazyLock<Instruments> = LazyLock::new(|| demo("instruments.toml"));

fn installed(variant: &str) -> Installed<'static> {
    let (fleet, fluids) = (demo::<Fleet>("fleet.toml"), demo::<Fluids>("fluids.toml"));
    let truck = fleet.truck.iter().find(|truck| truck.variant == variant).unwrap();
    Installed {
        driveline: Some(fleet.programmed(truck).unwrap()),
        fluid: Some(fluids.fluid["alder"].fluid()),
        fill: fluids.fill.as_ref().map(|fill| fill.fill().unwrap()),
        instruments: Some(&INSTRUMENTS),
    }
}

static WREN: LazyLock<Vec<u8>> =
    LazyLock::new(|| demo::<Family>("family.toml").flash_image("wren", installed("wren")).unwrap());

fn bare<'a>(train: &'a Train, members: &'a [&'a str]) -> Contents<'a> {
    Contents {
        title: "",
        train,
        members,
        elements: &[],
        gear_names: &[],
        gears: &[],
        packs: &[],
        shifts: &[],
        live_gears: &[],
        live_elements: &[],
        linings: None,
        ratings: None,
        driveline: None,
        fluid: None,
        fill: None,
        family: FamilyContents::default(),
    }
}

#[test]
fn every_part_comes_back_as_the_record_gives_it() {
    let family = demo::<Family>("family.toml");
    for variant in ["teal", "wren", "heron"] {
        let given = installed(variant);
        let bytes = family.flash_image(variant, given).unwrap();
        let image = Image::open(&bytes).unwrap();
        let named = family.train(variant).unwrap();
        assert_eq!(image.title().unwrap(), format!("{variant}, Corrib family: bench to road to fleet"));
        assert_eq!(image.train().unwrap(), named.train);
        for (place, name) in (0..).zip(&named.members) {
            assert_eq!(image.member_name(place).unwrap(), name);
        }
        for (place, name) in (0..).zip(&named.elements) {
            assert_eq!(image.element_name(place).unwrap(), name);
        }
        assert_eq!(usize::from(image.pack_count().unwrap()), family.clutch.len());
        for place in 0..image.pack_count().unwrap() {
            let read = image.pack(place).unwrap();
            let clutch = &family.clutch[image.element_name(read.element).unwrap()];
            assert_eq!(read.pack, clutch.pack(variant).unwrap());
            assert_eq!(image.member_name(read.turns_with).unwrap(), clutch.turns_with);
        }
        assert_eq!(usize::from(image.gear_count().unwrap()), named.gears.len());
        for (place, gear) in (0..).zip(&named.gears) {
            let read = image.gear(place).unwrap();
            assert_eq!(image.gear_name(place).unwrap(), gear.id);
            assert_eq!((read.closed, read.one_way), (gear.closed, gear.one_way));
            assert_eq!(Some(read.efficiency), gear.efficiency);
        }
        assert_eq!(usize::from(image.shift_count().unwrap()), family.shift.len());
        let last = image.shift(6).unwrap();
        assert_eq!((image.gear_name(last.from).unwrap(), image.gear_name(last.to).unwrap()), ("7", "8"));
        let linings = image.linings().unwrap();
        assert_eq!((linings.holding.value, linings.slipping.u, linings.geometry_u_rel), (0.112, 0.007, 0.02));
        assert_eq!(
            image.ratings().unwrap().line_max_kpa,
            family.variant.as_ref().unwrap()[variant].line_control_max_kpa
        );
        assert_eq!(image.driveline().unwrap(), given.driveline.unwrap());
        assert_eq!(image.fluid().unwrap(), given.fluid.unwrap());
        assert_eq!(image.fill().unwrap(), given.fill.unwrap());
    }
}

#[test]
fn the_gear_table_of_the_image_is_that_of_the_demo() {
    let image = Image::open(&WREN).unwrap();
    let train = image.train().unwrap();
    let published = ["854760/201019", "854760/201019", "644160/201019", "644160/201019", "5070/2209", "65/37", "65/47"];
    for (place, ratio) in (0..).zip(published) {
        let state = train.resolve(image.gear(place).unwrap().closed, Load::Drive).unwrap();
        assert_eq!(format!("{}/{}", state.ratio.num, state.ratio.den), ratio);
    }
}

/// Ratios, and slip at the elements per slip at the input, from the script that is not in this project: `expected.json` of the
/// scenario has -97.857 at B1, -152.222 at C1 and -315.687 at C3 for 74.054 1/min too fast at the input in fourth (job J6),
/// and `truth.toml` of its trace 2.00617 without sign at C1 in sixth.
#[test]
fn the_live_monitor_finds_gears_and_suspects_without_the_train() {
    let image = Image::open(&WREN).unwrap();
    let (gears, count) = image.live_gears().unwrap();
    let gears = &gears[..usize::from(count)];
    assert_eq!(
        gears.iter().map(|gear| gear.number).collect::<Vec<_>>(),
        [1, 2, 3, 4, 5, 6, 7, 8, -1],
        "1B and 2B are 1 and 2"
    );
    let ratios = [4.2521, 3.2045, 2.2952, 1.7568, 1.3830, 1.0, 0.8596, 0.7517, -2.9670];
    for (gear, ratio) in gears.iter().zip(ratios) {
        assert!((gear.ratio - ratio).abs() < 0.00006, "{}", gear.ratio);
    }
    let slip = |number: i8, input_slip_rpm: f32| {
        let gear = gears.iter().find(|gear| gear.number == number).unwrap();
        let suspects = gear.suspects[..usize::from(gear.suspect_count)].iter();
        let mut slips: Vec<_> = suspects
            .map(|suspect| (image.element_name(suspect.element).unwrap(), suspect.slip_per_input_slip * input_slip_rpm))
            .collect();
        slips.sort_by_key(|(name, _)| *name);
        slips
    };
    for ((name, rpm), (expected_name, expected_rpm)) in
        slip(4, 74.05405).iter().zip([("B1", -97.857_14), ("C1", -152.222_22), ("C3", -315.686_85)])
    {
        assert!(*name == expected_name && (rpm - expected_rpm).abs() < 0.001, "{name} {rpm}");
    }
    let in_sixth = slip(6, 1.0);
    assert_eq!(in_sixth.iter().map(|(name, _)| *name).collect::<Vec<_>>(), ["C1", "C2", "C3"]);
    assert!((in_sixth[0].1.abs() - 2.00617).abs() < 0.00001, "{in_sixth:?}");
    assert_eq!(
        slip(1, 1.0).iter().map(|(name, _)| *name).collect::<Vec<_>>(),
        ["B1", "C2", "F1"],
        "F1 holds under drive"
    );

    // C1 of the wren: 5 plates of 2.0 mm between 56 and 78 mm, 7850 kg/m3, 480 J/(kg K): 0.7270 kg, 349.0 J/K by hand.
    let (c1, f1) = (2, 5);
    assert_eq!((image.element_name(c1).unwrap(), image.element_name(f1).unwrap()), ("C1", "F1"));
    let (elements, count) = image.live_elements().unwrap();
    assert_eq!(count, 6);
    let warmed = elements[usize::from(c1)];
    assert!((warmed.heat_capacity_j_k - 349.0).abs() < 0.1, "{warmed:?}");
    assert_eq!((warmed.cooling_s, warmed.limit_c), (20.0, 250.0));
    assert_eq!(elements[usize::from(f1)], LiveElement::UNKNOWN, "a one-way clutch has no steel plates");
}

#[test]
fn the_family_comes_back_as_the_record_gives_it() {
    let family = demo::<Family>("family.toml");
    let image = Image::open(&WREN).unwrap();
    let variants = &family.meta.variants;
    let counts = image.family().unwrap();
    assert_eq!(usize::from(counts.variants), variants.len());
    assert_eq!(usize::from(counts.marks), family.evidence.len());
    assert_eq!(usize::from(counts.sizes), family.evidence_measured.len());
    assert_eq!(usize::from(counts.fits), family.fit.len());
    let part = |place: u8| image.part_name(place).unwrap();
    for (place, variant) in (0..).zip(variants) {
        assert_eq!(image.variant_name(place).unwrap(), variant);
        assert!((image.prior(place).unwrap() - family.prior.as_ref().unwrap()[variant]).abs() < 1e-300);
    }
    for (place, mark) in (0..).zip(&family.evidence) {
        let read = image.mark(place).unwrap();
        assert_eq!((image.mark_name(place).unwrap(), part(read.part)), (mark.id.as_str(), mark.carrier.as_str()));
        assert_eq!(read.minutes.to_bits(), mark.minutes.to_bits());
        assert_eq!(image.exchanged(read.part).unwrap().to_bits(), mark.exchanged.to_bits());
        for (at, variant) in (0..).zip(variants) {
            assert_eq!(image.mark_chance(place, at).unwrap().to_bits(), mark.chance[variant].to_bits());
        }
    }
    for (place, size) in (0..).zip(&family.evidence_measured) {
        let read = image.size(place).unwrap();
        assert_eq!((image.size_name(place).unwrap(), part(read.part)), (size.id.as_str(), size.carrier.as_str()));
        assert!(read.u_mm > 0.0, "the demonstration's instruments");
        for (at, variant) in (0..).zip(variants) {
            assert_eq!(image.size_limits(place, at).unwrap(), size.size_mm[variant].limits());
        }
    }
    for (place, fit) in (0..).zip(&family.fit) {
        let read = image.fit(place).unwrap();
        assert_eq!(image.fit_name(place).unwrap(), fit.id);
        assert_eq!((part(read.shaft), part(read.bore)), (fit.shaft.as_str(), fit.bore.as_str()));
        assert_eq!(read.wanted_mm, Limits { lower: 0.0, upper: fit.limit_mm });
        let named = |size: u8| (size != NO_SIZE).then(|| image.size_name(size).unwrap());
        let is_evidence = |name: &&str| family.evidence_measured.iter().any(|size| size.id == *name);
        assert_eq!(named(read.shaft_size), fit.shaft_size.as_deref().filter(is_evidence));
        assert_eq!(named(read.bore_size), fit.bore_size.as_deref().filter(is_evidence));
        for (at, variant) in (0..).zip(variants) {
            assert_eq!(image.fit_shaft(place, at).unwrap(), fit.shaft_mm[variant].limits());
            assert_eq!(image.fit_bore(place, at).unwrap(), fit.bore_mm[variant].limits());
        }
    }
    let beyond = counts.variants;
    assert_eq!(image.prior(beyond).unwrap_err().kind(), "OUT_OF_RANGE");
    assert_eq!(image.mark_chance(0, beyond).unwrap_err().kind(), "OUT_OF_RANGE");
    assert_eq!(image.fit_name(counts.fits).unwrap_err().kind(), "OUT_OF_RANGE");
    assert_eq!(image.size(counts.sizes).unwrap_err().kind(), "OUT_OF_RANGE");
}

#[test]
fn an_image_without_a_family_says_so() {
    let train = Train::new(3, 0, 1, 2).unwrap();
    let members = ["input", "output", "case"];
    let mut buffer = vec![0; MAX_IMAGE_BYTES];
    let length = flash::write(&bare(&train, &members), &mut buffer).unwrap();
    let image = Image::open(&buffer[..length]).unwrap();
    for error in
        [image.family().map(drop), image.prior(0).map(drop), image.fit(0).map(drop), image.mark_name(0).map(drop)]
    {
        assert_eq!(error.unwrap_err().kind(), "MISSING");
    }
    assert_eq!(image.member_name(2).unwrap(), "case");
}

#[test]
fn what_was_not_given_is_missing() {
    let bytes = demo::<Family>("family.toml").flash_image("wren", Installed::default()).unwrap();
    let image = Image::open(&bytes).unwrap();
    assert_eq!(image.driveline().unwrap_err().kind(), "MISSING");
    assert_eq!(image.fluid().unwrap_err().kind(), "MISSING");
    assert_eq!(image.fill().unwrap_err().kind(), "MISSING");
}

#[test]
fn bytes_after_the_image_do_not_matter() {
    let mut page = WREN.clone();
    page.resize(8192, 0xFF);
    assert_eq!(Image::open(&page).unwrap().bytes(), Image::open(&WREN).unwrap().bytes());
}

proptest! {
    #[test]
    fn any_bytes_give_an_image_or_an_error(bytes in prop::collection::vec(any::<u8>(), 0..2000)) {
        let _ = Image::open(&bytes);
    }

    /// Bytes with a good mark, length and checksum: only the contents are junk.
    #[test]
    fn any_contents_give_an_image_or_an_error(at in 10..5000_usize, junk in prop::collection::vec(any::<u8>(), 1..40)) {
        let mut bytes = WREN.clone();
        let end = bytes.len() - 4;
        let at = at % end;
        for (byte, new) in bytes[..end].iter_mut().skip(at.max(10)).zip(junk) {
            *byte = new;
        }
        let checksum = crc32(&bytes[..end]);
        bytes[end..].copy_from_slice(&checksum.to_le_bytes());
        if let Ok(image) = Image::open(&bytes) {
            for gear in 0..image.gear_count().unwrap() {
                let _ = image.train().unwrap().resolve(image.gear(gear).unwrap().closed, Load::Drive);
            }
            if let Ok(counts) = image.family() {
                prop_assert!((0..counts.marks).all(|mark| image.mark(mark).unwrap().part < counts.parts));
                prop_assert!((0..counts.fits).all(|fit| image.fit_name(fit).is_ok() && image.fit_bore(fit, 0).is_ok()));
            }
        }
    }

    #[test]
    fn unchecked_bytes_are_never_read_beyond_their_end(bytes in prop::collection::vec(any::<u8>(), 0..2500), at in any::<u8>()) {
        let image = Image::checked_before(&bytes);
        let _ = (image.train(), image.title(), image.gear(at), image.pack(at), image.shift(at), image.fill());
        let _ = (image.member_name(at), image.element_name(at), image.gear_name(at), image.fluid());
        let _ = (image.live_gears(), image.live_elements());
        let _ = (image.family(), image.prior(at), image.mark_chance(at, at), image.size_limits(at, at), image.fit_bore(at, at));
        let _ = (image.variant_name(at), image.part_name(at), image.mark_name(at), image.size_name(at), image.fit_name(at));
    }
}

/// CRC-32 bit by bit (ISO 3309, polynomial 0xEDB88320 reflected), apart from the library's.
fn crc32(bytes: &[u8]) -> u32 {
    let step = |crc: u32, _| (crc >> 1) ^ (0xEDB8_8320 & (crc & 1).wrapping_neg());
    !bytes.iter().fold(u32::MAX, |crc, &byte| (0..8).fold(crc ^ u32::from(byte), step))
}
