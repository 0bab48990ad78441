//! The flash image: round trips, and every way in which it can be damaged.

use std::fs;
use std::sync::LazyLock;

use proptest::prelude::*;
use trainwright::Error;
use trainwright::flash::{self, Contents, IMAGE_VERSION, Image, MAX_IMAGE_BYTES, MAX_NAME_BYTES};
use trainwright::record::{Family, Fleet, Fluids, Installed, Record};
use trainwright::train::{Load, Train};

fn demo<T: Record>(name: &str) -> T {
    let path = format!("{}/python/trainwright/demo/{name}", env!("CARGO_MANIFEST_DIR"));
    T::from_toml(name, &fs::read_to_string(path).unwrap()).unwrap()
}

fn installed(variant: &str) -> Installed {
    let (fleet, fluids) = (demo::<Fleet>("fleet.toml"), demo::<Fluids>("fluids.toml"));
    let truck = fleet.truck.iter().find(|truck| truck.variant == variant).unwrap();
    Installed {
        driveline: Some(fleet.programmed(truck).unwrap()),
        fluid: Some(fluids.fluid["alder"].fluid()),
        fill: fluids.fill.as_ref().map(|fill| fill.fill().unwrap()),
    }
}

static WREN: LazyLock<Vec<u8>> =
    LazyLock::new(|| demo::<Family>("family.toml").flash_image("wren", installed("wren")).unwrap());

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

#[test]
fn what_was_not_given_is_missing() {
    let bytes = demo::<Family>("family.toml").flash_image("wren", Installed::default()).unwrap();
    let image = Image::open(&bytes).unwrap();
    assert_eq!(image.driveline().unwrap_err().kind(), "MISSING");
    assert_eq!(image.fluid().unwrap_err().kind(), "MISSING");
    assert_eq!(image.fill().unwrap_err().kind(), "MISSING");
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
    later[4] = 2;
    let error = Image::open(&later).unwrap_err();
    assert!(matches!(error, Error::OutOfRange { value: 2.0, high, .. } if high == f64::from(IMAGE_VERSION)), "{error}");
}

#[test]
fn bytes_after_the_image_do_not_matter() {
    let mut page = WREN.clone();
    page.resize(4096, 0xFF);
    assert_eq!(Image::open(&page).unwrap().bytes(), Image::open(&WREN).unwrap().bytes());
}

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
        linings: None,
        ratings: None,
        driveline: None,
        fluid: None,
        fill: None,
    }
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

proptest! {
    #[test]
    fn any_bytes_give_an_image_or_an_error(bytes in prop::collection::vec(any::<u8>(), 0..2000)) {
        let _ = Image::open(&bytes);
    }

    /// Bytes with a good mark, length and checksum: only the contents are junk.
    #[test]
    fn any_contents_give_an_image_or_an_error(at in 10..2000_usize, junk in prop::collection::vec(any::<u8>(), 1..40)) {
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
        }
    }

    #[test]
    fn unchecked_bytes_are_never_read_beyond_their_end(bytes in prop::collection::vec(any::<u8>(), 0..700), at in any::<u8>()) {
        let image = Image::checked_before(&bytes);
        let _ = (image.train(), image.title(), image.gear(at), image.pack(at), image.shift(at), image.fill());
        let _ = (image.member_name(at), image.element_name(at), image.gear_name(at), image.fluid());
    }
}

/// CRC-32 bit by bit (ISO 3309, polynomial 0xEDB88320 reflected), apart from the library's.
fn crc32(bytes: &[u8]) -> u32 {
    let step = |crc: u32, _| (crc >> 1) ^ (0xEDB8_8320 & (crc & 1).wrapping_neg());
    !bytes.iter().fold(u32::MAX, |crc, &byte| (0..8).fold(crc ^ u32::from(byte), step))
}
