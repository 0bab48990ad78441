//! The layout of the plain structs in an image: their fields in order, little-endian, no padding.

use crate::clutch::{Annulus, ElementPack, Head, Pack};
use crate::error::{Error, Result};
use crate::fluid::{Fill, Fluid, SUMP_ROWS, Sump};
use crate::judge::{Limits, Reading};
use crate::live::{LiveElement, LiveGear, LiveSuspect, MAX_LIVE_SUSPECTS};
use crate::road::Driveline;
use crate::train::{Blocks, Element, ElementKind, PlanetarySet, SetJoins, SetKind, SetTeeth};

use super::{Counts, FamilyCounts, Gear, Linings, PartFit, PartMark, PartSize, Ratings, Shift};

/// Fills a buffer from its start.
pub(super) struct Writer<'b> {
    buffer: &'b mut [u8],
    used: usize,
}

impl<'b> Writer<'b> {
    pub(super) fn new(buffer: &'b mut [u8]) -> Self {
        Self { buffer, used: 0 }
    }

    pub(super) fn put_bytes(&mut self, bytes: &[u8]) -> Result<()> {
        let room = self.used..self.used + bytes.len();
        let target = self.buffer.get_mut(room).ok_or(Error::Inconsistent {
            name: "flash image",
            why: "the buffer is too small; give MAX_IMAGE_BYTES, which every image fits",
        })?;
        target.copy_from_slice(bytes);
        self.used += bytes.len();
        Ok(())
    }

    pub(super) fn written(&mut self) -> &mut [u8] {
        self.buffer.get_mut(..self.used).unwrap_or_default()
    }
}

/// Reads what a [`Writer`] wrote.
pub(super) struct Reader<'a> {
    rest: &'a [u8],
}

impl<'a> Reader<'a> {
    /// Reads from this byte on.
    pub(super) fn at(bytes: &'a [u8], offset: usize) -> Self {
        Self { rest: bytes.get(offset..).unwrap_or_default() }
    }

    pub(super) fn take_bytes(&mut self, count: usize) -> Result<&'a [u8]> {
        let (taken, rest) = self.rest.split_at_checked(count).ok_or(TRUNCATED)?;
        self.rest = rest;
        Ok(taken)
    }
}

pub(super) const TRUNCATED: Error =
    Error::Inconsistent { name: "flash image", why: "it ends too early; copy the whole file to the flash" };

/// A value with a fixed place in an image.
pub(super) trait Packed: Sized {
    /// Bytes it takes.
    const BYTES: usize;
    fn put(&self, writer: &mut Writer<'_>) -> Result<()>;
    fn take(reader: &mut Reader<'_>) -> Result<Self>;
}

macro_rules! packed_numbers {
    ($($number:ty),*) => {$(
        impl Packed for $number {
            const BYTES: usize = size_of::<Self>();
            fn put(&self, writer: &mut Writer<'_>) -> Result<()> {
                writer.put_bytes(&self.to_le_bytes())
            }
            fn take(reader: &mut Reader<'_>) -> Result<Self> {
                let bytes = reader.take_bytes(Self::BYTES)?;
                bytes.try_into().map(Self::from_le_bytes).map_err(|_| TRUNCATED)
            }
        }
    )*};
}

macro_rules! packed_structs {
    ($($name:ident { $($field:ident: $type:ty),* $(,)? })*) => {$(
        impl Packed for $name {
            const BYTES: usize = 0 $(+ <$type>::BYTES)*;
            fn put(&self, writer: &mut Writer<'_>) -> Result<()> {
                $(self.$field.put(writer)?;)*
                Ok(())
            }
            fn take(reader: &mut Reader<'_>) -> Result<Self> {
                Ok(Self { $($field: Packed::take(reader)?),* })
            }
        }
    )*};
}

macro_rules! packed_choices {
    ($($name:ident { $($number:literal = $choice:ident),* $(,)? })*) => {$(
        impl Packed for $name {
            const BYTES: usize = 1;
            fn put(&self, writer: &mut Writer<'_>) -> Result<()> {
                let number: u8 = match self { $(Self::$choice => $number),* };
                number.put(writer)
            }
            fn take(reader: &mut Reader<'_>) -> Result<Self> {
                match u8::take(reader)? {
                    $($number => Ok(Self::$choice),)*
                    value => Err(Error::OutOfRange {
                        name: stringify!($name),
                        value: value.into(),
                        low: 0.0,
                        high: [$($number),*].len() as f64 - 1.0,
                    }),
                }
            }
        }
    )*};
}

packed_numbers! { u8, i8, u16, u32, f32, f64 }

packed_choices! {
    SetKind { 0 = Simple, 1 = DoublePinion, 2 = TwoSun, 3 = Stepped }
    ElementKind { 0 = Clutch, 1 = Brake, 2 = OneWay, 3 = Dog }
    Blocks { 0 = Neither, 1 = Reverse, 2 = Forward }
}

packed_structs! {
    Counts {
        members: u8, sets: u8, elements: u8, gears: u8, packs: u8, shifts: u8, input: u8, output: u8, fixed: u8,
        live_gears: u8, family: FamilyCounts,
    }
    FamilyCounts { variants: u8, parts: u8, marks: u8, sizes: u8, fits: u8 }
    PartMark { minutes: f64, part: u8 }
    PartSize { minutes: f64, u_mm: f64, part: u8 }
    PartFit { wanted_mm: Limits, shaft: u8, bore: u8, shaft_size: u8, bore_size: u8 }
    SetTeeth { sun: u16, sun_2: u16, planet: u16, planet_2: u16, ring: u16 }
    SetJoins { sun: u8, sun_2: u8, ring: u8, carrier: u8 }
    PlanetarySet { kind: SetKind, planets: u8, teeth: SetTeeth, joins: SetJoins }
    Element { kind: ElementKind, blocks: Blocks, first: u8, second: u8 }
    Gear { closed: u32, one_way: u32, efficiency: f64 }
    Shift { from: u8, to: u8, output_rpm: f64 }
    LiveSuspect { element: u8, slip_per_input_slip: f32 }
    LiveGear { number: i8, ratio: f32, suspects: [LiveSuspect; MAX_LIVE_SUSPECTS], suspect_count: u8 }
    LiveElement { heat_capacity_j_k: f32, cooling_s: f32, limit_c: f32 }
    Reading { value: f64, u: f64 }
    Limits { lower: f64, upper: f64 }
    Annulus { inner_radius_mm: f64, outer_radius_mm: f64 }
    Head { wetted: Annulus, free_surface_radius_mm: f64 }
    Pack {
        lining: Annulus, piston: Annulus, faces: u32, worn: bool, return_spring_n: Limits, seal_drag_n: f64, head: Head, dam: Head,
    }
    ElementPack { pack: Pack, element: u8, turns_with: u8 }
    Linings { holding: Reading, slipping: Reading, geometry_u_rel: f64 }
    Ratings { turbine_nm: f64, output_nm: f64, reverse_turbine_nm: f64, line_max_kpa: f64 }
    Driveline { axle_ratio: f64, transfer_ratio: f64, circumference_mm: Reading }
    Fluid { density_15c_kg_m3: f64, expansion_per_k: f64, viscosity_40c_mm2_s: f64, viscosity_100c_mm2_s: f64 }
    Sump { rows: u32, height_mm: [f64; SUMP_ROWS], free_area_cm2: [f64; SUMP_ROWS] }
    Fill {
        sump: Sump, dry_l: f64, service_l: f64, cooler_and_lines_l: f64, drainback_off_l: f64, check_low_c: f64,
        check_high_c: f64, check_reference_c: f64, pickup_uncovers_mm: f64, gear_dips_mm: f64,
    }
}

impl Packed for bool {
    const BYTES: usize = 1;
    fn put(&self, writer: &mut Writer<'_>) -> Result<()> {
        u8::from(*self).put(writer)
    }
    fn take(reader: &mut Reader<'_>) -> Result<Self> {
        match u8::take(reader)? {
            0 => Ok(false),
            1 => Ok(true),
            value => Err(Error::OutOfRange { name: "flag", value: value.into(), low: 0.0, high: 1.0 }),
        }
    }
}

impl<T: Packed + Copy, const N: usize> Packed for [T; N] {
    const BYTES: usize = N * T::BYTES;
    fn put(&self, writer: &mut Writer<'_>) -> Result<()> {
        self.iter().try_for_each(|item| item.put(writer))
    }
    fn take(reader: &mut Reader<'_>) -> Result<Self> {
        let mut list = [T::take(reader)?; N];
        for item in list.iter_mut().skip(1) {
            *item = T::take(reader)?;
        }
        Ok(list)
    }
}

/// A flag, then the value or as many zeros.
impl<T: Packed> Packed for Option<T> {
    const BYTES: usize = 1 + T::BYTES;
    fn put(&self, writer: &mut Writer<'_>) -> Result<()> {
        self.is_some().put(writer)?;
        match self {
            Some(value) => value.put(writer),
            None => (0..T::BYTES).try_for_each(|_| 0_u8.put(writer)),
        }
    }
    fn take(reader: &mut Reader<'_>) -> Result<Self> {
        let given = bool::take(reader)?;
        let mut value = Reader { rest: reader.take_bytes(T::BYTES)? };
        if given { T::take(&mut value).map(Some) } else { Ok(None) }
    }
}
