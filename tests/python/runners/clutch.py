"""Runners of the clutch chapter's vectors whose columns are not the arguments themselves."""

from runners.judge import VERDICTS
from runners.train import names_of, train

from trainwright import clutch as core
from trainwright.judge import Limits, Reading, Rule

AT = ["pressure_kpa", "friction", "drum_speed_rpm", "oil_density_kg_m3"]


def numbers(row, columns):
    return {column: row.number(column) for column in columns}


def count(row, column):
    return int(row.number(column))


def ring(row, part=""):
    return core.Annulus(
        inner_radius_mm=row.number(f"{part}inner_radius_mm"), outer_radius_mm=row.number(f"{part}outer_radius_mm")
    )


def head(row, part=""):
    return core.Head(wetted=ring(row, part), free_surface_radius_mm=row.number(f"{part}free_surface_radius_mm"))


def pack(row):
    return core.Pack(
        lining=ring(row, "lining_"),
        piston=ring(row, "piston_"),
        faces=count(row, "faces"),
        worn=bool(count(row, "worn")),
        return_spring_n=Limits(lower=row.number("weak_spring_n"), upper=row.number("strong_spring_n")),
        seal_drag_n=row.number("seal_drag_n"),
        head=head(row, "head_"),
        dam=head(row, "dam_"),
    )


def fields(answer, *names):
    return [float(getattr(answer, name)) for name in names]


def area_mm2(row):
    return [ring(row).area_mm2()]


def mean_radius_new_mm(row):
    return [ring(row).mean_radius_new_mm()]


def mean_radius_worn_mm(row):
    return [ring(row).mean_radius_worn_mm()]


def best_inner_radius_mm(row):
    return [ring(row).best_inner_radius_mm()]


def clamp_at_peak_n(row):
    return [ring(row).clamp_at_peak_n(peak_mpa=row.number("peak_mpa"))]


def peak_at_clamp_mpa(row):
    return [ring(row).peak_at_clamp_mpa(clamp_n=row.number("clamp_n"))]


def head_force_n(row):
    return [head(row).head_force_n(**numbers(row, ["oil_density_kg_m3", "drum_speed_rpm"]))]


def head_pressure_kpa(row):
    return [head(row).head_pressure_kpa(**numbers(row, ["radius_mm", "oil_density_kg_m3", "drum_speed_rpm"]))]


def spring_force_n(row):
    springs = core.ReturnSprings(count=count(row, "count"), **numbers(row, ["rate_n_mm", "free_length_mm"]))
    return [springs.spring_force_n(fitted_length_mm=row.number("fitted_length_mm"))]


def plate_faces(row):
    return [float(core.plate_faces(count(row, "friction_plates")))]


def disc_faces(row):
    discs = {column: count(row, column) for column in ("driving_discs", "driven_discs")}
    return [float(core.disc_faces(**discs))]


def torque_by_radius_nm(row):
    lining = numbers(row, ["pressure_mpa", "friction_at_axis", "friction_per_mm"])
    return [core.LiningByRadius(lining=ring(row), faces=count(row, "faces"), **lining).torque_by_radius_nm()]


def mean_radius_mm(row):
    return [pack(row).mean_radius_mm()]


def capacity(row):
    forces = ["piston_area_mm2", "apply_force_n", "head_force_n", "dam_force_n", "net_force_n", "mean_radius_mm"]
    return fields(pack(row).capacity(**numbers(row, AT)), *forces, "lining_mean_mpa", "lining_peak_mpa", "torque_nm")


def capacity_line(row):
    line = pack(row).capacity_line(oil_density_kg_m3=row.number("oil_density_kg_m3"))
    return fields(line, "piston_area_mm2", "head_n_per_rpm2", "held_back_n", "arm_mm")


def capacity_nm(row):
    return [pack(row).capacity_nm(**numbers(row, AT))]


def pressure_needed(row):
    needed = pack(row).pressure_needed(row.number("torque_nm"), **numbers(row, AT[1:]))
    return fields(needed, "strong_spring_kpa", "weak_spring_kpa")


def friction_needed(row):
    at = numbers(row, ["pressure_kpa", "drum_speed_rpm", "oil_density_kg_m3"])
    return [pack(row).friction_needed(row.number("torque_nm"), **at)]


def drag_speed_rpm(row):
    return [pack(row).drag_speed_rpm(oil_density_kg_m3=row.number("oil_density_kg_m3"))]


def reading(row, value, u):
    return Reading(value=row.number(value), u=row.number(u))


def hold(row):
    held = pack(row).hold(
        reading(row, "need_nm", "need_u_nm"),
        pressure_kpa=reading(row, "pressure_kpa", "pressure_u_kpa"),
        friction=reading(row, "friction", "friction_u"),
        rule=Rule.stated_chances(go=row.number("go"), no_go=row.number("no_go")),
        **numbers(row, ["geometry_u_rel", "drum_speed_rpm", "oil_density_kg_m3"]),
    )
    needed = fields(held.pressure_needed, "strong_spring_kpa", "weak_spring_kpa")
    return [held.margin, *needed, held.friction_needed, held.judgment.chance, VERDICTS[held.judgment.verdict]]


def review(row):
    rule = Rule.stated_chances(go=row.number("go"), no_go=row.number("no_go"))
    state = train(row["train"]).solve(names_of(int(row["closed"])))
    places = [place.split(":") for place in row["packs"].split()]
    found = core.review(
        state,
        {f"e{element}": core.ElementPack(pack=pack(row), turns_with=f"m{member}") for element, member in places},
        pressure_kpa=reading(row, "pressure_kpa", "pressure_u_kpa"),
        friction=reading(row, "friction", "friction_u"),
        turbine_torque_nm=reading(row, "turbine_torque_nm", "turbine_torque_u_nm"),
        rule=rule,
        **numbers(row, ["geometry_u_rel", "oil_density_kg_m3", "turbine_speed_rpm"]),
    )
    weakest = found.weakest
    element = float(found.governing.removeprefix("e"))
    amounts = fields(weakest, "share", "drum_speed_rpm", "need_nm", "capacity_nm", "margin", "friction_needed", "chance")
    return [float(len(found.elements)), element, *amounts, VERDICTS[weakest.verdict]]


def governing(row):
    return [float(core.governing([row.number(f"margin_{i}") for i in range(3)]))]


def band(row):
    return core.Band(**numbers(row, ["drum_radius_mm", "width_mm", "wrap_deg"]))


def band_torque(answer):
    return fields(answer, "tension_ratio", "tight_n", "slack_n", "lining_peak_mpa", "torque_nm", "nm_per_friction")


def energized(row):
    return band_torque(band(row).energized(**numbers(row, ["servo_force_n", "friction"])))


def deenergized(row):
    return band_torque(band(row).deenergized(**numbers(row, ["servo_force_n", "friction"])))


def servo_force_n(row):
    servo = core.Servo(piston=ring(row), **numbers(row, ["return_spring_n", "lever_ratio"]))
    return [servo.servo_force_n(pressure_kpa=row.number("pressure_kpa"))]


HELD = ["output_inertia_kg_m2", "input_speed_rpm", "output_speed_rpm", "clutch_torque_nm", "load_torque_nm"]


def end(answer):
    works = ["energy_j", "start_heat_kw", "drive_work_j", "load_work_j", "locked_torque_nm"]
    return fields(answer, "locks", "stays_locked", "slip_shrinks_rpm_s", "time_s", "final_speed_rpm", *works)


def slip_end(row):
    return end(core.Slip(**numbers(row, ["input_inertia_kg_m2", "drive_torque_nm", *HELD])).slip_end())


def held_input_end(row):
    return end(core.HeldInput(**numbers(row, HELD)).held_input_end())


def steel(row):
    return core.Steel(**numbers(row, ["conductivity_w_m_k", "density_kg_m3", "specific_heat_j_kg_k", "thickness_mm"]))


def rise(answer):
    return fields(answer, "rise_k", "at_s", "thick_until_s", "thick")


def surface_rise_constant(row):
    return rise(steel(row).surface_rise_constant(**numbers(row, ["flux_w_mm2", "time_s"])))


def surface_rise_falling(row):
    return rise(steel(row).surface_rise_falling(**numbers(row, ["start_flux_w_mm2", "slip_time_s"])))


def plate_heat(row):
    slip = core.HeldInput(**numbers(row, HELD)).held_input_end()
    mass = row.number("steel_mass_kg")
    plates = core.SteelPlates(steel=steel(row), steel_mass_kg=mass, lining=ring(row), faces=count(row, "faces"))
    heat = plates.plate_heat(slip)
    total = fields(heat, "energy_j_mm2", "start_flux_w_mm2", "bulk_rise_k")
    return [*total, *fields(heat.surface, "rise_k", "thick")]
