//! The Python interface. `python/src/<chapter>.rs` mirrors `core/<chapter>.rs`.
//!
//! The module below lists everything that Python sees. `trainwright/<chapter>.py` passes each chapter on.
#![expect(clippy::too_many_arguments, reason = "Python passes them by name")]

mod array;
mod card;
mod class;
mod clutch;
mod converter;
mod duty;
mod error;
mod explain;
mod fit;
mod fleet;
mod fluid;
mod hazard;
mod hold;
mod hydraulic;
mod identify;
mod interchange;
mod judge;
mod live;
mod quantity;
mod record;
mod road;
mod stack;
mod table;
mod tire;
mod tow;
mod train;
mod units;

use pyo3::prelude::*;

/// The compiled part of trainwright.
#[pymodule(gil_used = false)]
mod _native {
    use super::*;

    #[pymodule_export]
    use crate::card::{Card, Source, Symbol, card, cards};
    #[pymodule_export]
    use crate::explain::{Explanation, explain};
    #[pymodule_export]
    use crate::version;

    /// Round fits: clearance cold and hot, pressed bushings, ISO 286 limits, bushing load and leakage.
    #[pymodule]
    mod fit {
        #[pymodule_export]
        use crate::fit::{
            BushingLoad, Clearance, Elastic, Gap, GapLeak, HeldBushing, IsoFit, IsoLimits, LeakRatio,
            MeasuredClearance, Metal, PressJoint, Pressed, PressedBushing, RecordedFit, Retention, RunningClearance,
            Size20, WarmClearance, WarmPart, WarmReading, Warmth, WornGap, bushing_load, clearance,
            eccentricity_factor, fit_of, fits_of, iso_fit, iso_limits, iso_size, measured, toleranced, warm_clearance,
        };
    }

    /// Transmission fluid: density, viscosity, mixing, level and fill. Hot fluid burns.
    #[pymodule]
    mod fluid {
        #[pymodule_export]
        use crate::fluid::{
            Adjustment, Fill, Fluid, FrictionPortion, LevelAt, LevelCheck, Portion, PourVolumes, Sump, ViscosityIndex,
            ViscosityLine, ViscosityPortion, VolumeCorrection, blend, blend_friction, blend_viscosity,
            constant_area_level_mm, correction_factor, density_15c_from_observed, dynamic_viscosity,
            expansion_from_15c, growth_ml, old_share, tilt_shift_mm, viscosity_100c_for_index, viscosity_index,
            volume_correction, volume_correction_60f,
        };
    }

    /// What can hurt someone in the work that a result belongs to, with a caution to print.
    #[pymodule]
    mod hazard {
        #[pymodule_export]
        use crate::hazard::{caution, titles};
    }

    /// Clutches and bands: forces, capacity, holding, shifts and their heat.
    #[pymodule]
    mod clutch {
        #[pymodule_export]
        use crate::clutch::{
            Annulus, Band, BandTorque, Capacity, CapacityLine, ElementMargin, ElementPack, GearReview, Head, HeldInput,
            Hold, LiningByRadius, Pack, PlateHeat, PressureNeeded, ReturnSprings, Servo, Slip, SlipEnd, Steel,
            SteelPlates, SurfaceRise, bulk_rise_k, disc_faces, governing, plate_faces, referred_inertia_kg_m2, review,
            surface_drop_mm,
        };
    }

    /// Torque converters: characteristic, match with an engine, stall, lock-up slip. A stall test overheats within seconds.
    #[pymodule]
    mod converter {
        #[pymodule_export]
        use crate::converter::{
            Characteristic, EngineCurve, EngineToday, FluidCharge, InletAir, LockupSlip, MeasuredStall, OperatingPoint,
            SlipLimits, StallInputs, StallPlan, StallRatings, StallSpeed, StallVerdict, air_correction_j1349,
            air_torque_factor, capacity_factor, efficiency, element_torques, from_output_side, from_torque_coefficient,
            impeller_torque_nm, judge_stall, lockup_slip, operating_point, operating_points, plan_stall, speed_ratio,
            stall_speed,
        };
    }

    /// What holds: one-way clutches, park lock, thrust bearings, shafts, splines. A computed capacity is not a rating.
    #[pymodule]
    mod hold {
        #[pymodule_export]
        const BALL_EXPONENT: f64 = trainwright::hold::BALL_EXPONENT;
        #[pymodule_export]
        const ROLLER_EXPONENT: f64 = trainwright::hold::ROLLER_EXPONENT;
        #[pymodule_export]
        use crate::hold::{
            AxialThrust, Change, Comparison, FigureChange, Helical, HelicalSun, HollowOverSolid, MeanLoad,
            NeedleCapacity, NeedleChange, NeedleHold, NeedleLasts, NeedleThrust, PackChange, PartComparison,
            RatedShaft, RatingLife, SetPack, Shaft, ShaftChange, ShaftHold, ShaftLoad, Spline, SplineLoad, SunChange,
            ThrustWasher, Torsion, WasherLoad, WheelThrust, axial_thrust, change, compare, compare_needles,
            compare_packs, compare_shafts, compare_suns, gear_thrusts, mean_load, rating_life, shafts, thrust_race,
            thrust_washers, wheel_thrust,
        };
        #[pymodule_export]
        use crate::hold::{
            ContactBody, Ejection, FreeRoll, Latch, LineContact, LinePressure, OneWayDuty, OneWayHold, OneWayPart,
            ParkComparison, ParkGear, ParkHold, ParkLoad, ParkLock, ParkStress, Parked, Pawl, Ratchet, RatchetIndex,
            SpurTooth, StrutLoad, TakeUp, ToothBending, ToothStrength, Wedge, WedgeLoad, compare_park_gears,
            form_factor, grip_nm, locks, one_way_duty, one_way_part, park_load, park_lock, roll_limits_49_cfr_571_114,
            take_up, velocity_factor,
        };
    }

    /// How much of its life a duty uses, and which trucks come first. A computed damage ranks; it does not promise a life.
    #[pymodule]
    mod duty {
        #[pymodule_export]
        use crate::duty::{
            AgingRule, BearingDuty, BusSignal, BusValue, CauseFit, CauseFound, CycleCount, Damage, DamageInterval,
            DamageLine, DamageRange, FluidLife, GradeHours, MeshDuty, RankInterval, RatioCause, RatioRule, Residence,
            SpeedsRatio, TruckDuty, WheelDuty, bootstrap_ranks, bus_signal, damage_interval, fluid_life, mesh_duty,
            other_driveline, other_teeth, rainflow, rank_intervals, ratio_of, resampled_total, residence, truck_duty,
            truck_duty_cases, weigh_causes, wheel_causes,
        };
        #[pymodule_export]
        use crate::fleet::screen_power;
    }

    /// Pump, orifices, valves, line pressure needed and available, cooler flow. Hot fluid burns.
    #[pymodule]
    mod hydraulic {
        #[pymodule_export]
        const SHARP_EDGE_DISCHARGE: f64 = trainwright::hydraulic::SHARP_EDGE_DISCHARGE;
        #[pymodule_export]
        const TURBULENT_REYNOLDS: f64 = trainwright::hydraulic::TURBULENT_REYNOLDS;
        #[pymodule_export]
        const SHARP_EDGE_JET_DEG: f64 = trainwright::hydraulic::SHARP_EDGE_JET_DEG;
        #[pymodule_export]
        use crate::hydraulic::{
            ChamberDisplacement, CoolerCheck, CoolerLimits, CoolerReading, FlowMargin, GearPressure, InternalGearPump,
            Land, LeastFlow, Metering, NextReading, OilAt, Orifice, OrificeFlow, PatternRule, PressurePoint,
            PressureReading, PressureSuspect, PressureSuspects, Pump, PumpClearance, PumpDuty, PumpFlow, Regulated,
            Regulator, SlidingGap, Slot, SlotFlow, TimedFlow, external_gear_by_centers_cm3_rev, external_gear_cm3_rev,
            field_rule_cm3_rev, flow_at_reference, gear_pressure, in_parallel_mm2, in_series_mm2, next_reading, oil_at,
            orifice_diameter_mm, passage_flow_l_min, pump_clearance, sliding_gap, suspect_circuits, timed_flow,
            vane_cm3_rev, volumetric_efficiency,
        };
    }

    /// The pass over the telematics rows of a fleet. A computed damage ranks; it does not promise a life.
    #[pymodule]
    mod fleet {
        use trainwright::duty::screen as core;

        #[pymodule_export]
        const AGGREGATES: [&str; 7] = crate::fleet::AGGREGATES;
        #[pymodule_export]
        const OUTPUTS: [&str; 16] = crate::fleet::OUTPUTS;
        #[pymodule_export]
        const COLUMNS: [&str; core::SCREEN_COLUMNS] = core::SCREEN_COLUMN_NAMES;
        #[pymodule_export]
        const FLAGS: [&str; core::SCREEN_FLAGS] = core::SCREEN_FLAG_NAMES;
        #[pymodule_export]
        use crate::fleet::{Gear, Holding, Limits, Screen, Unit};
    }

    /// Which variant is on the bench: weighing marks and sizes, part by part, and what to look at next.
    #[pymodule]
    mod identify {
        #[pymodule_export]
        use crate::identify::{
            Conclusion, Identification, Look, LookMade, Nearest, NextLook, Part, PartFinding, Weighed, Weighing, Worth,
            conclude, ln_density, ln_seen, nearest, prior_of_counts, weigh,
        };
    }

    /// Which parts interchange singly, one way, only as a set, after machining, or never; matched sets and orders.
    #[pymodule]
    mod interchange {
        #[pymodule_export]
        use crate::interchange::{
            Answer, Joint, JointState, Joints, Machining, MatchedSet, Meeting, Order, Other, Price, Reason, cover_share,
        };
    }

    /// Readings, limits and the decision between them.
    #[pymodule]
    mod judge {
        #[pymodule_export]
        use crate::judge::{
            Budget, Expanded, Input, Judgment, Limits, Reading, Repeated, Rule, Settlement, Turning, chance_inside,
            combine, combine_correlated, coverage_factor, effective_freedom, expand, judge, mean_of, normal_cdf,
            normal_quantile, propagate, settle, settle_by, student_cdf, student_quantile, turning_value,
        };
    }

    /// Watching units while they turn: gear in effect, slip, shifts, alarms. What turns can catch; what was driven is hot.
    #[pymodule]
    mod live {
        #[pymodule_export]
        const COLUMNS: [&str; crate::live::COLUMNS.len()] = crate::live::COLUMNS;
        #[pymodule_export]
        const EVENT_KINDS: [&str; crate::live::EVENT_KINDS.len()] = crate::live::EVENT_KINDS;
        #[pymodule_export]
        const OUTPUTS: [&str; crate::live::OUTPUTS.len()] = crate::live::OUTPUTS;
        #[pymodule_export]
        const PHASES: [&str; crate::live::PHASES.len()] = crate::live::PHASES;
        #[pymodule_export]
        use crate::live::{
            Counts, Element, Event, Gear, GearEvidence, Limits, Monitor, RankedSuspect, Ratio, Shift, ShiftsToLimit,
            SpeedPair, SpeedSensor, SpeedSpread, State, Suspect, Suspects, Unit, Watch, run_length, step_bias_rpm,
            threshold_for,
        };
    }

    /// Records: TOML that a parts person can maintain, every fault of it named at its line.
    #[pymodule]
    mod record {
        #[pymodule_export]
        use crate::record::{Family, Fleet, Fluids, Instruments, Jobs, Problem, check, check_text, load, schema};
    }

    /// The road side: shaft speeds, shift points, speedometer, road load, grade, air. A computed capability is not a rating.
    #[pymodule]
    mod road {
        #[pymodule_export]
        use crate::road::{
            Air, CoastDown, CoastDownLoad, Combination, Driveline, Engaged, GradeHeld, NumbersToProgram, RoadLoad,
            ShaftSpeeds, ShiftPoint, Speedometer, density_of_air, grade_deg, grade_held, grade_pct,
            limits_49_cfr_393_82, limits_un_r39, mean_grade_pct, numbers_to_program, road_load, rolling_coefficient_at,
            shift_at_output_speed, shift_at_road_speed, speedometer, standard_air,
        };
    }

    /// End play and clutch clearance: worst case and root sum of squares, choice of shim and ring, what to measure first.
    #[pymodule]
    mod stack {
        #[pymodule_export]
        use crate::stack::{
            ApplyFill, AxialGrowth, Chain, ChainLink, GrownPlay, HotPlay, MeasureGain, PackHeights, PackRoom, Piece,
            PieceChoice, PieceList, PieceOutcome, PistonStroke, PistonTravel, Selection, apply_fill, chain,
            mean_of_steps, room_from_fitted, what_to_measure,
        };
    }

    /// Tires: size designations, diameters, rolling circumference, load index, speed symbol.
    #[pymodule]
    mod tire {
        #[pymodule_export]
        const RADIAL_FACTOR: f64 = trainwright::tire::RADIAL_FACTOR;
        #[pymodule_export]
        const DIAGONAL_FACTOR: f64 = trainwright::tire::DIAGONAL_FACTOR;
        #[pymodule_export]
        use crate::tire::{
            RegulationDiameter, Rolling, Tire, WheelRadii, load_index_kg, load_index_lb, parse, parse_lenient,
            ply_rating, radii, rolling_by_count, rolling_by_factor, rolling_by_share, symbol_km_h,
        };
    }

    /// What a combination asks of the unit, against what the vehicle is rated for. A computed capacity is no rating.
    #[pymodule]
    mod tow {
        #[pymodule_export]
        use crate::tow::{
            AxleWeights, CombinationLoads, Coupled, Distribution, Levers, RatingCheck, RatingReview, RatingRow,
            TowRatings, Trailer, axle_loads, axle_tires_kg, gawr_left_kg, gvwr_class, gvwr_least_kg,
            restoring_moment_nm, share_band_kg,
        };
        #[pymodule_export]
        use crate::tow::{
            Climb, CoolPull, Cooler, CoolerHeat, CoolerSize, CoolerTask, CriterionCheck, DrivenPiece, ElevationNoise,
            EquivalentMass, GearPull, GearRule, Gearing, Haul, HeatModel, HeatNode, LargestSpeed, Launch, LaunchForce,
            LaunchGrip, OfferedGear, Pull, RatedFor, Rig, RoadPiece, RunUp, RunUpGear, RunUpTime, Running, Stance,
            ThroughFlow, TimeTo, TotalClimb, UnitLoss, UnlockedPull, Warmed, check_criterion, converter_loss_kw,
            cooler_size, criterion_limits, effectiveness, equivalent_mass, flow_heat_w_k, gearing, grip_on_grade,
            output_inertia_kg_m2, pieces, rig, smooth, through_flow_rise, total_climb, transfer_units, unit_loss,
        };
    }

    /// Gear trains: exact ratios, member speeds, torque shares and states.
    #[pymodule]
    mod train {
        #[pymodule_export]
        use crate::train::{
            Assembly, Gear, Losses, NextGear, PowerFlow, RatioFit, Signature, State, Suspect, Symptom, Train,
            counted_ratio, fit_ratio, timed_ratio,
        };
    }

    /// Values known only as common practice of the trade, no source.
    #[pymodule]
    mod practice {
        use trainwright::practice as core;

        #[pymodule_export]
        const ASPECT_NOT_STATED_PCT: f64 = core::ASPECT_NOT_STATED_PCT;
        #[pymodule_export]
        const STATIC_LOADED_RADIUS_OVER_DIAMETER: f64 = core::STATIC_LOADED_RADIUS_OVER_DIAMETER;
        #[pymodule_export]
        const PAPER_FRICTION_LOW: f64 = core::PAPER_FRICTION_LOW;
        #[pymodule_export]
        const PAPER_FRICTION_HIGH: f64 = core::PAPER_FRICTION_HIGH;
        #[pymodule_export]
        const LINING_PRESSURE_LOW_MPA: f64 = core::LINING_PRESSURE_LOW_MPA;
        #[pymodule_export]
        const LINING_PRESSURE_HIGH_MPA: f64 = core::LINING_PRESSURE_HIGH_MPA;
        #[pymodule_export]
        const HOLDING_MARGIN: f64 = core::HOLDING_MARGIN;
        #[pymodule_export]
        const CLEARANCE_PER_PLATE_LOW_MM: f64 = core::CLEARANCE_PER_PLATE_LOW_MM;
        #[pymodule_export]
        const CLEARANCE_PER_PLATE_HIGH_MM: f64 = core::CLEARANCE_PER_PLATE_HIGH_MM;
        #[pymodule_export]
        const SHIFT_ENERGY_HIGH_J_MM2: f64 = core::SHIFT_ENERGY_HIGH_J_MM2;
        #[pymodule_export]
        const SHIFT_FLUX_HIGH_W_MM2: f64 = core::SHIFT_FLUX_HIGH_W_MM2;
        #[pymodule_export]
        const SHIFT_TIME_LOW_S: f64 = core::SHIFT_TIME_LOW_S;
        #[pymodule_export]
        const SHIFT_TIME_HIGH_S: f64 = core::SHIFT_TIME_HIGH_S;
        #[pymodule_export]
        const FALSE_ALARM_RUN_H: f64 = core::FALSE_ALARM_RUN_H;
        #[pymodule_export]
        const FLARE_HIGH_RPM: f64 = core::FLARE_HIGH_RPM;
        #[pymodule_export]
        const FLARE_LOW_RPM: f64 = core::FLARE_LOW_RPM;
        #[pymodule_export]
        const SHIFT_COLD_C: f64 = core::SHIFT_COLD_C;
        #[pymodule_export]
        const SHIFT_FOLLOW_S: f64 = core::SHIFT_FOLLOW_S;
        #[pymodule_export]
        const SHIFT_SETTLE_S: f64 = core::SHIFT_SETTLE_S;
        #[pymodule_export]
        const WARM_UP_S: f64 = core::WARM_UP_S;
        #[pymodule_export]
        const TIE_UP_DIP_SHARE: f64 = core::TIE_UP_DIP_SHARE;
        #[pymodule_export]
        const STEEL_SPECIFIC_HEAT_J_KG_K: f64 = core::STEEL_SPECIFIC_HEAT_J_KG_K;
        #[pymodule_export]
        const STEEL_CONDUCTIVITY_W_M_K: f64 = core::STEEL_CONDUCTIVITY_W_M_K;
        #[pymodule_export]
        const STEEL_DENSITY_KG_M3: f64 = core::STEEL_DENSITY_KG_M3;
        #[pymodule_export]
        const EXTERNAL_MESH_EFFICIENCY: f64 = core::EXTERNAL_MESH_EFFICIENCY;
        #[pymodule_export]
        const INTERNAL_MESH_EFFICIENCY: f64 = core::INTERNAL_MESH_EFFICIENCY;
        #[pymodule_export]
        const STEEL_EXPANSION_LOW_PER_K: f64 = core::STEEL_EXPANSION_LOW_PER_K;
        #[pymodule_export]
        const STEEL_EXPANSION_HIGH_PER_K: f64 = core::STEEL_EXPANSION_HIGH_PER_K;
        #[pymodule_export]
        const ALUMINUM_EXPANSION_LOW_PER_K: f64 = core::ALUMINUM_EXPANSION_LOW_PER_K;
        #[pymodule_export]
        const ALUMINUM_EXPANSION_HIGH_PER_K: f64 = core::ALUMINUM_EXPANSION_HIGH_PER_K;
        #[pymodule_export]
        const BRONZE_EXPANSION_LOW_PER_K: f64 = core::BRONZE_EXPANSION_LOW_PER_K;
        #[pymodule_export]
        const BRONZE_EXPANSION_HIGH_PER_K: f64 = core::BRONZE_EXPANSION_HIGH_PER_K;
        #[pymodule_export]
        const CAST_IRON_EXPANSION_LOW_PER_K: f64 = core::CAST_IRON_EXPANSION_LOW_PER_K;
        #[pymodule_export]
        const CAST_IRON_EXPANSION_HIGH_PER_K: f64 = core::CAST_IRON_EXPANSION_HIGH_PER_K;
        #[pymodule_export]
        const STEEL_YOUNG_MPA: f64 = core::STEEL_YOUNG_MPA;
        #[pymodule_export]
        const STEEL_POISSON: f64 = core::STEEL_POISSON;
        #[pymodule_export]
        const ALUMINUM_YOUNG_MPA: f64 = core::ALUMINUM_YOUNG_MPA;
        #[pymodule_export]
        const ALUMINUM_POISSON: f64 = core::ALUMINUM_POISSON;
        #[pymodule_export]
        const PRESS_FRICTION_LOW: f64 = core::PRESS_FRICTION_LOW;
        #[pymodule_export]
        const PRESS_FRICTION_HIGH: f64 = core::PRESS_FRICTION_HIGH;
        #[pymodule_export]
        const RUNNING_CLEARANCE_LOW_MM: f64 = core::RUNNING_CLEARANCE_LOW_MM;
        #[pymodule_export]
        const RUNNING_CLEARANCE_HIGH_MM: f64 = core::RUNNING_CLEARANCE_HIGH_MM;
        #[pymodule_export]
        const BORE_GAUGE_U_MM: f64 = core::BORE_GAUGE_U_MM;
        #[pymodule_export]
        const RACE_YOUNG_MPA: f64 = core::RACE_YOUNG_MPA;
        #[pymodule_export]
        const RACE_POISSON: f64 = core::RACE_POISSON;
        #[pymodule_export]
        const ROCKING_FACTOR_LOW: f64 = core::ROCKING_FACTOR_LOW;
        #[pymodule_export]
        const ROCKING_FACTOR_HIGH: f64 = core::ROCKING_FACTOR_HIGH;
        #[pymodule_export]
        const NEEDLE_STATIC_FACTOR: f64 = core::NEEDLE_STATIC_FACTOR;
        #[pymodule_export]
        const NEEDLE_LEAST_LOAD_SHARE: f64 = core::NEEDLE_LEAST_LOAD_SHARE;
        #[pymodule_export]
        const SPLINE_CARRYING_SHARE: f64 = core::SPLINE_CARRYING_SHARE;
        #[pymodule_export]
        const STEEL_SHEAR_MODULUS_MPA: f64 = core::STEEL_SHEAR_MODULUS_MPA;
        #[pymodule_export]
        const SUMP_NORMAL_LOW_C: f64 = core::SUMP_NORMAL_LOW_C;
        #[pymodule_export]
        const SUMP_NORMAL_HIGH_C: f64 = core::SUMP_NORMAL_HIGH_C;
        #[pymodule_export]
        const SUMP_ALARM_LOW_C: f64 = core::SUMP_ALARM_LOW_C;
        #[pymodule_export]
        const SUMP_ALARM_HIGH_C: f64 = core::SUMP_ALARM_HIGH_C;
        #[pymodule_export]
        const UNIT_HEAT_CAPACITY_J_K: f64 = core::UNIT_HEAT_CAPACITY_J_K;
        #[pymodule_export]
        const CASE_COOLING_LOW_W_K: f64 = core::CASE_COOLING_LOW_W_K;
        #[pymodule_export]
        const CASE_COOLING_HIGH_W_K: f64 = core::CASE_COOLING_HIGH_W_K;
        #[pymodule_export]
        const TOW_COOLER_LOW_W_K: f64 = core::TOW_COOLER_LOW_W_K;
        #[pymodule_export]
        const TOW_COOLER_HIGH_W_K: f64 = core::TOW_COOLER_HIGH_W_K;
        #[pymodule_export]
        const SATELLITE_ELEVATION_U_M: f64 = core::SATELLITE_ELEVATION_U_M;
        #[pymodule_export]
        const SATELLITE_ELEVATION_CORRELATION_M: f64 = core::SATELLITE_ELEVATION_CORRELATION_M;
        #[pymodule_export]
        const GRADE_WINDOW_M: f64 = core::GRADE_WINDOW_M;
        #[pymodule_export]
        const FLUID_AGING_REFERENCE_C: f64 = core::FLUID_AGING_REFERENCE_C;
        #[pymodule_export]
        const FLUID_AGING_HALVING_K: f64 = core::FLUID_AGING_HALVING_K;
        #[pymodule_export]
        const FLUID_AGING_LIFE_KM: f64 = core::FLUID_AGING_LIFE_KM;
        #[pymodule_export]
        const GEAR_SLOPE_LOW: f64 = core::GEAR_SLOPE_LOW;
        #[pymodule_export]
        const GEAR_SLOPE_HIGH: f64 = core::GEAR_SLOPE_HIGH;
        #[pymodule_export]
        const GEAR_RATIO_TOLERANCE: f64 = core::GEAR_RATIO_TOLERANCE;
        #[pymodule_export]
        const TELEMATICS_GAP_S: f64 = core::TELEMATICS_GAP_S;
        #[pymodule_export]
        const STANDING_OUTPUT_RPM: f64 = core::STANDING_OUTPUT_RPM;
        #[pymodule_export]
        const LEAST_TELLING_TORQUE_NM: f64 = core::LEAST_TELLING_TORQUE_NM;
        #[pymodule_export]
        const SATELLITE_FLOOR_KM_H: f64 = core::SATELLITE_FLOOR_KM_H;
        #[pymodule_export]
        const TONGUE_SHARE_LOW: f64 = core::TONGUE_SHARE_LOW;
        #[pymodule_export]
        const TONGUE_SHARE_HIGH: f64 = core::TONGUE_SHARE_HIGH;
        #[pymodule_export]
        const PIN_SHARE_LOW: f64 = core::PIN_SHARE_LOW;
        #[pymodule_export]
        const PIN_SHARE_HIGH: f64 = core::PIN_SHARE_HIGH;
        #[pymodule_export]
        const TIRE_FRICTION_DRY: f64 = core::TIRE_FRICTION_DRY;
        #[pymodule_export]
        const TIRE_FRICTION_WET: f64 = core::TIRE_FRICTION_WET;
        #[pymodule_export]
        const STALL_ALLOW_RPM: f64 = core::STALL_ALLOW_RPM;
        #[pymodule_export]
        const STALL_STOP_RPM: f64 = core::STALL_STOP_RPM;
        #[pymodule_export]
        const STALL_STATOR_SHARE: f64 = core::STALL_STATOR_SHARE;
        #[pymodule_export]
        const STALL_LONGEST_S: f64 = core::STALL_LONGEST_S;
        #[pymodule_export]
        const STALL_COOL_S: f64 = core::STALL_COOL_S;
        #[pymodule_export]
        const STALL_FLUID_START_C: f64 = core::STALL_FLUID_START_C;
        #[pymodule_export]
        const STALL_FLUID_MOST_C: f64 = core::STALL_FLUID_MOST_C;
        #[pymodule_export]
        const FLUID_DENSITY_KG_M3: f64 = core::FLUID_DENSITY_KG_M3;
        #[pymodule_export]
        const FLUID_SPECIFIC_HEAT_J_KG_K: f64 = core::FLUID_SPECIFIC_HEAT_J_KG_K;
        #[pymodule_export]
        const LOCKUP_SLIP_NORMAL_RPM: f64 = core::LOCKUP_SLIP_NORMAL_RPM;
        #[pymodule_export]
        const LOCKUP_SLIP_SUSPECT_RPM: f64 = core::LOCKUP_SLIP_SUSPECT_RPM;
    }

    /// Shop units at the edge; every factor is exact and stands in the core.
    #[pymodule]
    mod units {
        #[pymodule_export]
        use crate::units::{
            c_to_f, cm3_to_in3, f_to_c, f_to_k_difference, gallon_to_l, hp_to_kw, in_to_mm, in3_to_cm3,
            k_to_f_difference, kg_to_lb, km_h_to_mph, km_to_mile, kpa_to_psi, kw_to_hp, l_to_gallon, l_to_quart,
            lb_to_kg, lbf_ft_to_nm, lbf_to_n, mile_to_km, mm_to_in, mm_to_thou, mph_to_km_h, n_to_lbf, nm_to_lbf_ft,
            per_sqrt_lbf_ft_to_per_sqrt_nm, per_sqrt_nm_to_per_sqrt_lbf_ft, psi_to_kpa, quart_to_l, thou_to_mm,
        };
    }
}

/// The version of the library, `"major.minor.patch"`.
///
/// >>> trainwright.version().count(".")
/// 2
#[pyfunction]
fn version() -> &'static str {
    env!("CARGO_PKG_VERSION")
}
