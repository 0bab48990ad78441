//! The tire chapter against its sources.

mod support;

use proptest::prelude::*;
use support::vectors;
use trainwright::judge::Reading;
use trainwright::tire::{
    self, DIAGONAL_FACTOR, DiameterBasis, LoadRange, RADIAL_FACTOR, SpeedSymbol, Tire, TireKind, TirePlies,
    TireService, parse, parse_lenient,
};
use trainwright::{Error, practice};

fn fields(tire: Tire) -> [f64; 13] {
    let marks = [tire.extra_load, tire.run_flat, tire.mud_snow, tire.above_symbol];
    [
        f64::from(tire.kind as u8),
        f64::from(tire.service as u8),
        f64::from(tire.plies as u8),
        tire.width_mm,
        tire.aspect_pct,
        tire.diameter_in,
        tire.width_in,
        tire.rim_in,
        f64::from(tire.load_range as u8),
        f64::from(tire.load_index),
        f64::from(tire.load_index_dual),
        tire.speed_symbol.symbol_km_h().unwrap_or(0.0),
        marks.iter().zip([1.0, 2.0, 4.0, 8.0]).map(|(mark, weight)| f64::from(u8::from(*mark)) * weight).sum(),
    ]
}

#[test]
fn parse_vectors() {
    vectors("tire_parse", |row| Ok(fields(parse(row.text("text"))?)));
}

#[test]
fn parse_lenient_vectors() {
    vectors("tire_parse_lenient", |row| {
        let tire = parse_lenient(row.text("text"))?;
        Ok([tire.width_mm, tire.aspect_pct, tire.rim_in, f64::from(u8::from(tire.plies_assumed))])
    });
}

#[test]
fn regulation_diameter_vectors() {
    vectors("tire_regulation_diameter", |row| {
        let size = parse(row.text("text"))?.regulation_diameter()?;
        Ok([size.diameter_mm, size.rim_mm, size.section_height_mm, f64::from(size.basis as u8)])
    });
}

#[test]
fn geometric_diameter_vectors() {
    vectors("tire_geometric_diameter_mm", |row| Ok([parse(row.text("text"))?.geometric_diameter_mm()?]));
}

#[test]
fn load_index_vectors() {
    vectors("tire_load_index_kg", |row| Ok([tire::load_index_kg(row.count("load_index") as u16)?]));
    vectors("tire_load_index_lb", |row| Ok([tire::load_index_lb(row.count("load_index") as u16)?]));
}

#[test]
fn symbol_km_h_vectors() {
    vectors("tire_symbol_km_h", |row| Ok([SpeedSymbol::from_letters(row.text("letters"))?.symbol_km_h()?]));
}

fn reading(row: &support::Row, name: &str) -> Reading {
    Reading { value: row.number(name), u: row.number(&format!("u_{name}")) }
}

fn outputs(rolling: tire::Rolling) -> [f64; 6] {
    [
        rolling.circumference_mm.value,
        rolling.circumference_mm.u,
        rolling.radius_mm.value,
        rolling.rev_per_km.value,
        rolling.rev_per_km.u,
        rolling.rev_per_mile.value,
    ]
}

#[test]
fn rolling_vectors() {
    vectors("tire_rolling_by_factor", |row| {
        Ok(outputs(tire::rolling_by_factor(row.number("diameter_mm"), reading(row, "factor"))?))
    });
    vectors("tire_rolling_by_share", |row| {
        Ok(outputs(tire::rolling_by_share(row.number("diameter_mm"), reading(row, "share"))?))
    });
    vectors("tire_rolling_by_count", |row| {
        Ok(outputs(tire::rolling_by_count(reading(row, "distance_m"), reading(row, "revolutions"))?))
    });
}

#[test]
fn radii_vectors() {
    vectors("tire_radii", |row| {
        let diameter_mm = row.number("diameter_mm");
        let rolling = tire::rolling_by_share(diameter_mm, Reading::exact(row.number("share"))?)?;
        let radii = tire::radii(diameter_mm, row.number("static_over_diameter"), rolling)?;
        Ok([radii.free_mm, radii.static_loaded_mm, radii.effective_mm])
    });
}

#[test]
fn a_refused_text_says_where_and_what() {
    let refusals = [
        ("", 0, "a section width or an overall diameter"),
        ("F70-14", 0, "a section width or an overall diameter"),
        ("27570R18", 0, "a section width in mm (100 to 600)"),
        ("245/55/18", 6, "R, D, B or - before the rim diameter"),
        ("275/70R", 7, "a rim diameter"),
        ("265 / 65 R 18.5", 11, "a rim diameter: 8 to 30, or 14.5, 16.5, 17.5, 19.5, 20.5, 22.5 or 24.5"),
        ("31×10.50R15LT 10", 17, "a speed symbol, such as H or A8"),
        ("225/45ZR17 (94Y", 15, "a closing parenthesis"),
        ("18x9.50R17LT", 8, "a rim at least 2 inches below the overall diameter"),
        ("265/65R18 112T 90S", 15, "one load index with speed symbol"),
        ("265/65R18 wide", 10, "a load index with speed symbol, a load range letter, C, LT, XL, M+S or the end"),
    ];
    for (text, at, expected) in refusals {
        assert_eq!(parse(text), Err(Error::Text { name: "tire designation", at, expected }), "{text}");
    }
}

#[test]
fn the_canonical_text_is_the_trade_spelling() {
    let spellings = [
        ("p 215 / 65 r 15 95 h", "P215/65R15 95H"),
        ("lt235/85r16/c 120/116q", "LT235/85R16C 120/116Q"),
        ("35X12.5R17LT", "35x12.50R17LT"),
        ("11 R 22.5", "11R22.5"),
        ("11.00R20", "11.00R20"),
        ("7.5R16LT LR E", "7.50R16LT LRE"),
        ("225/45 ZR 17 XL (94Y)", "225/45ZR17 (94Y) XL"),
        ("245/40 RF 18 M&S", "245/40RF18 M+S"),
        ("205/75-15", "205/75D15"),
        ("7.50-16", "7.50-16"),
        ("195/75 R16 C 107/105R", "195/75R16C 107/105R"),
        ("225/70R16 10PR", "225/70R16 LRE"),
        ("265/70R19.5 G", "265/70R19.5 LRG"),
        ("8-14.5ST", "8-14.5ST"),
    ];
    for (given, canonical) in spellings {
        let tire = parse(given).unwrap();
        assert_eq!(tire.text(), canonical);
        assert_eq!(tire.to_string(), canonical);
        assert_eq!(parse(canonical), Ok(tire), "{canonical}");
    }
}

#[test]
fn a_constructed_tire_is_the_parsed_one() {
    let same = [
        (Tire::metric(TireService::LightTruck, 235.0, 80.0, 17.0), "LT235/80R17"),
        (Tire::no_aspect(TireService::Unstated, 185.0, 14.0), "185R14"),
        (Tire::flotation(TireService::Unstated, 35.0, 12.5, 17.0), "35x12.50R17"),
        (Tire::inch(TireService::Unstated, 11.0, 22.5), "11R22.5"),
    ];
    for (built, text) in same {
        assert_eq!(built, parse(text));
    }
}

#[test]
fn a_size_that_cannot_exist_is_refused() {
    let refused = [
        (Tire::metric(TireService::Unstated, f64::NAN, 65.0, 18.0), "width_mm"),
        (Tire::metric(TireService::Unstated, 265.0, f64::INFINITY, 18.0), "aspect_pct"),
        (Tire::metric(TireService::Unstated, 265.0, 65.0, 18.3), "rim_in"),
        (Tire::metric(TireService::Unstated, 265.0, 65.0, f64::NAN), "rim_in"),
        (Tire::no_aspect(TireService::Unstated, 14.0, 14.0), "width_mm"),
        (Tire::flotation(TireService::Unstated, 15.0, 12.5, 17.0), "diameter_in"),
        (Tire::flotation(TireService::Unstated, 35.0, -1.0, 17.0), "width_in"),
        (Tire::inch(TireService::Unstated, 185.0, 14.0), "width_in"),
    ];
    for (tire, parameter) in refused {
        let message = tire.unwrap_err().to_string();
        assert!(message.starts_with(parameter), "{message}");
    }
    let inch = parse("11R22.5").unwrap();
    assert!(matches!(inch.with_aspect(80.0), Err(Error::Inconsistent { .. })));
    assert!(matches!(inch.geometric_diameter_mm(), Err(Error::Missing { .. })));
    assert!(matches!(parse("5.20R10").unwrap().regulation_diameter(), Err(Error::Missing { .. })));
}

#[test]
fn the_load_index_table_follows_its_formula() {
    for index in 0..=279 {
        let formula = 45.0 * 10_f64.powf(f64::from(index) / 80.0);
        let table = tire::load_index_kg(index).unwrap();
        assert!((table / formula - 1.0).abs() < 0.02, "{index}: {table}, formula {formula}");
        if index >= 200 {
            assert_eq!(table, 10.0 * tire::load_index_kg(index - 80).unwrap());
        }
        if index > 0 {
            assert!(table > tire::load_index_kg(index - 1).unwrap());
        }
    }
}

#[test]
fn speed_symbols_are_in_the_order_of_speeds_not_of_letters() {
    use SpeedSymbol::{A1, B, D, H, Q, S, U, V, W, Y};
    let speeds = [A1, B, D, Q, S, U, H, V, W, Y].map(|symbol| symbol.symbol_km_h().unwrap());
    assert!(speeds.is_sorted() && U < H && H < V);
    assert!(matches!(SpeedSymbol::Unmarked.symbol_km_h(), Err(Error::Missing { .. })));
    assert_eq!(parse("225/50VR16").unwrap().speed_in_size, V);
    assert_eq!(parse("225/50ZR16").unwrap().speed_in_size, SpeedSymbol::Z);
}

#[test]
fn a_load_range_names_plies() {
    assert_eq!(LoadRange::C.ply_rating(), Ok(6));
    assert_eq!(LoadRange::E.ply_rating(), Ok(10));
    assert_eq!(parse("LT265/75R16 14PR").unwrap().load_range, LoadRange::G);
    assert!(matches!(LoadRange::Unmarked.ply_rating(), Err(Error::Missing { .. })));
}

/// Sizes without an aspect ratio are built near 80 % (UN R30, from memory); inch sizes from 66 % of the nominal width (wide) to 112 % (narrow).
#[test]
fn tabulated_diameters_are_plausible() {
    for width in (125..=235).step_by(10) {
        for rim in 10..=16 {
            let tire = Tire::no_aspect(TireService::Unstated, f64::from(width), f64::from(rim)).unwrap();
            let Ok(size) = tire.regulation_diameter() else { continue };
            assert_eq!(size.basis, DiameterBasis::Table);
            let assumed = tire.with_aspect(practice::ASPECT_NOT_STATED_PCT).unwrap();
            let difference = size.diameter_mm - assumed.regulation_diameter().unwrap().diameter_mm;
            assert!(difference.abs() <= 7.0, "{tire}: {difference}");
        }
    }
    let rims = (8..=30).map(f64::from).chain([14.5, 16.5, 17.5, 19.5, 20.5, 22.5, 24.5]);
    let mut listed = 0;
    for (rim, service) in rims.flat_map(|rim| [(rim, TireService::Unstated), (rim, TireService::LightTruck)]) {
        for width_in in (600..=1800).step_by(5).map(|hundredths| f64::from(hundredths) / 100.0) {
            let tire = Tire::inch(service, width_in, rim).unwrap();
            let Ok(size) = tire.regulation_diameter() else { continue };
            let aspect = size.section_height_mm / (25.4 * width_in);
            assert!((0.65..1.12).contains(&aspect), "{tire}: {aspect}");
            listed += 1;
        }
    }
    assert_eq!(listed, 52);
}

#[test]
fn rolling_by_factor_and_by_share_say_the_same() {
    let factor = tire::rolling_by_factor(800.0, Reading::exact(RADIAL_FACTOR).unwrap()).unwrap();
    let share = RADIAL_FACTOR / std::f64::consts::PI;
    let by_share = tire::rolling_by_share(800.0, Reading::exact(share).unwrap()).unwrap();
    assert!((factor.circumference_mm.value - by_share.circumference_mm.value).abs() < 1e-9);
    let diagonal = tire::rolling_by_factor(800.0, Reading::exact(DIAGONAL_FACTOR).unwrap()).unwrap();
    assert!(diagonal.circumference_mm.value < factor.circumference_mm.value);
}

fn any_tire() -> impl Strategy<Value = Tire> {
    let whole_rims = (8..=30).prop_map(f64::from);
    let rims = prop_oneof![whole_rims, prop::sample::select(vec![14.5, 16.5, 17.5, 19.5, 20.5, 22.5, 24.5])];
    let sizes = prop_oneof![
        (100..=600, 15..=100).prop_map(|(w, a)| (TireKind::Metric, f64::from(w), f64::from(a), 0.0, 0.0)),
        (100..=600).prop_map(|w| (TireKind::NoAspect, f64::from(w), 0.0, 0.0, 0.0)),
        (32..=60, 400..=2500).prop_map(|(d, w)| (TireKind::Flotation, 0.0, 0.0, f64::from(d), f64::from(w) / 100.0)),
        (300..=2500).prop_map(|w| (TireKind::Inch, 0.0, 0.0, 0.0, f64::from(w) / 100.0)),
    ];
    let services = prop::sample::select(vec![
        TireService::Unstated,
        TireService::Passenger,
        TireService::LightTruck,
        TireService::Trailer,
        TireService::Temporary,
        TireService::Commercial,
    ]);
    let plies = prop::sample::select(vec![TirePlies::Radial, TirePlies::Diagonal, TirePlies::Belted]);
    let symbols = prop::sample::select(vec![SpeedSymbol::A8, SpeedSymbol::Q, SpeedSymbol::H, SpeedSymbol::Z]);
    let ranges = prop::sample::select(vec![LoadRange::Unmarked, LoadRange::C, LoadRange::E, LoadRange::N]);
    let marks = any::<(bool, bool, bool, bool, bool)>();
    (sizes, rims, services, plies, symbols, ranges, (0_u16..=279, 0_u16..=279), marks).prop_map(
        |(
            (kind, width_mm, aspect_pct, diameter_in, width_in),
            rim_in,
            service,
            plies,
            symbol,
            load_range,
            loads,
            marks,
        )| {
            let radial = plies == TirePlies::Radial;
            let never = kind == TireKind::Flotation && service == TireService::Commercial;
            let service = if never { TireService::LightTruck } else { service };
            let described = loads.0 > 0;
            Tire {
                kind,
                service,
                plies,
                load_range,
                speed_in_size: if radial && marks.0 { SpeedSymbol::V } else { SpeedSymbol::Unmarked },
                speed_symbol: if described { symbol } else { SpeedSymbol::Unmarked },
                width_mm,
                aspect_pct,
                diameter_in,
                width_in,
                rim_in,
                load_index: loads.0,
                load_index_dual: if described { loads.1 } else { 0 },
                above_symbol: described && marks.1,
                extra_load: marks.2,
                run_flat: radial && marks.3,
                mud_snow: marks.4,
                plies_assumed: false,
            }
        },
    )
}

proptest! {
    #[test]
    fn designations_survive_the_round_trip(tire in any_tire()) {
        prop_assert_eq!(parse(&tire.text()), Ok(tire), "{}", tire);
    }

    #[test]
    fn any_text_is_a_tire_or_an_error(text in ".{0,40}") {
        for tire in [parse(&text), parse_lenient(&text)].into_iter().flatten() {
            prop_assert_eq!(tire.checked(), Ok(tire));
        }
    }

    #[test]
    fn text_of_tire_letters_is_a_tire_or_an_error(text in "[0-9/xX. LTSPCRZDB×·()+M-]{0,24}") {
        if let Ok(tire) = parse(&text) {
            prop_assert_eq!(parse(&tire.text()), Ok(tire), "{} is {}", text, tire);
        }
    }

    #[test]
    fn a_wider_or_taller_tire_is_larger(width in 100_u32..600, aspect in 15_u32..100, rim in 8_u32..=30) {
        let outer = |width: u32, aspect: u32| {
            let tire = Tire::metric(TireService::Unstated, f64::from(width), f64::from(aspect), f64::from(rim)).unwrap();
            (tire.regulation_diameter().unwrap().diameter_mm, tire.geometric_diameter_mm().unwrap())
        };
        let (regulation, geometric) = outer(width, aspect);
        prop_assert!((regulation - geometric).abs() <= 1.5);
        prop_assert!(outer(width + 1, aspect).0 >= regulation && outer(width + 1, aspect).1 > geometric);
        prop_assert!(outer(width, aspect + 1).0 >= regulation && outer(width, aspect + 1).1 > geometric);
    }

    #[test]
    fn a_larger_tire_turns_less(diameter in 200.0..1500.0_f64, more in 0.001..0.5_f64, share in 0.9..1.0_f64) {
        let turns = |d| tire::rolling_by_share(d, Reading::exact(share).unwrap()).unwrap().rev_per_km.value;
        prop_assert!(turns(diameter * (1.0 + more)) < turns(diameter));
    }
}
