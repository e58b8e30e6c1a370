//! Figures worked out by hand from the formulas of the standards, to more digits than any table
//! prints: no source prints them.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use fastener::designation::read_clamping;
use fastener::drill::{Basis, percent_thread, usual};
use fastener::head::Head;
use fastener::repair::insert_hole;
use fastener::strip::{bolt_shear_mm2_per_mm, hole_shear_mm2_per_mm, shear_areas};
use fastener::tolerance::limits;
use fastener::torque::{Form, Friction, Joint, clamp_for_torque, torque_for_clamp};
use fastener::{Class, Thread};

const INCH_MM: f64 = 25.4;
const LBF_N: f64 = 4.448_221_615_260_5;

fn thread(name: &str) -> Thread {
    read_clamping(name).unwrap()
}

fn assert_near(what: &str, got: f64, expected: f64, within: f64) {
    assert!(
        (got - expected).abs() <= within,
        "{what}: {got}, not {expected}"
    );
}

/// ISO 68-1 and ISO 724: d2 = D - 0.75 H, D1 = D - 1.25 H, d3 = D1 - H/6, H = 0.8660254 P;
/// ISO 898-1: As = π/4 ((d2 + d3)/2)².
#[test]
fn metric_sizes_follow_the_basic_profile() {
    let sizes = [
        ("M5x0.8", 4.48038, 4.13397, 4.01850, 14.1825),
        ("M6x1", 5.35048, 4.91747, 4.77313, 20.1234),
        ("M8x1.25", 7.18810, 6.64684, 6.46641, 36.6085),
        ("M8x1", 7.35048, 6.91747, 6.77313, 39.1671),
        ("M10x1.5", 9.02572, 8.37620, 8.15970, 57.9896),
        ("M10x1.25", 9.18810, 8.64684, 8.46641, 61.1986),
        ("M10x1", 9.35048, 8.91747, 8.77313, 64.4940),
        ("M12x1.75", 10.86334, 10.10557, 9.85298, 84.2665),
        ("M12x1.5", 11.02572, 10.37620, 10.15970, 88.1260),
        ("M14x2", 12.70096, 11.83494, 11.54626, 115.439),
        ("M14x1.5", 13.02572, 12.37620, 12.15970, 124.545),
    ];
    for (name, pitch, minor, root, area) in sizes {
        let got = thread(name).geometry();
        assert_near(name, got.pitch_diameter_mm, pitch, 6e-6);
        assert_near(name, got.minor_diameter_mm, minor, 6e-6);
        assert_near(name, got.root_diameter_mm, root, 6e-6);
        assert_near(name, got.stress_area_mm2, area, area * 6e-6);
    }
}

/// ASME B1.1 with n threads to the inch: d2 = D - 0.649519/n, D1 = D - 1.082532/n,
/// d3 = D - 1.226870/n (UNR), At = π/4 (D - 0.9743/n)².
#[test]
fn unified_sizes_follow_the_basic_profile() {
    let sizes = [
        ("1/4-20", 0.21752, 0.19587, 0.18866, 0.03182),
        ("1/4-28", 0.22680, 0.21134, 0.20618, 0.03637),
        ("5/16-18", 0.27642, 0.25236, 0.24434, 0.05243),
        ("5/16-24", 0.28544, 0.26739, 0.26138, 0.05807),
        ("3/8-16", 0.33441, 0.30734, 0.29832, 0.07749),
        ("3/8-24", 0.34794, 0.32989, 0.32388, 0.08783),
        ("7/16-20", 0.40502, 0.38337, 0.37616, 0.11872),
        ("1/2-13", 0.45004, 0.41673, 0.40563, 0.14190),
        ("1/2-20", 0.46752, 0.44587, 0.43866, 0.15995),
    ];
    for (name, pitch, minor, root, area) in sizes {
        let got = thread(name).geometry();
        assert_near(name, got.pitch_diameter_mm / INCH_MM, pitch, 6e-6);
        assert_near(name, got.minor_diameter_mm / INCH_MM, minor, 6e-6);
        assert_near(name, got.root_diameter_mm / INCH_MM, root, 6e-6);
        assert_near(name, got.stress_area_mm2 / INCH_MM / INCH_MM, area, 6e-6);
    }
}

/// The usual drill is the nominal size less a pitch, to the nearest drill there is.
#[test]
fn usual_drills_are_the_size_less_a_pitch() {
    let metric = [
        "M5", "M6", "M8", "M10", "M12", "M14", "M8x1", "M10x1.25", "M10x1", "M12x1.5", "M14x1.5",
    ];
    let inch = [
        "1/4-20", "1/4-28", "5/16-18", "5/16-24", "3/8-16", "3/8-24", "7/16-20", "1/2-13", "1/2-20",
    ];
    let within = [
        (metric.as_slice(), 0.051),
        (inch.as_slice(), 0.004 * INCH_MM),
    ];
    for (names, within) in within {
        for name in names {
            let thread = thread(name);
            let less_a_pitch = thread.diameter_mm() - thread.pitch_mm();
            assert_near(name, usual(&thread).drill.diameter_mm, less_a_pitch, within);
        }
    }
}

/// A hole of D - P: 5/8 H and 3/4 H are two bases of the same percentage.
#[test]
fn a_hole_less_a_pitch_leaves_the_same_share_of_any_thread() {
    for name in ["M6", "M10x1.25", "M14", "1/4-20", "1/2-13"] {
        let thread = thread(name);
        let hole_mm = thread.diameter_mm() - thread.pitch_mm();
        let percent = |basis| percent_thread(&thread, hole_mm, basis);
        assert_near(name, percent(Basis::IsoEngagement), 92.376, 5e-4);
        assert_near(name, percent(Basis::UsChart), 76.980, 5e-4);
    }
}

/// The hole for a wire insert has the bolt's pitch: minor D + H/4, pitch D + 3/4 H, major
/// D + 3/2 H. Its drill lies between the minor and the pitch diameter.
#[test]
fn holes_for_wire_inserts_follow_the_profile() {
    let holes = [
        ("M5", 5.1732, 5.5196, 6.0392),
        ("M6", 6.2165, 6.6495, 7.2990),
        ("M8", 8.2706, 8.8119, 9.6238),
        ("M10", 10.3248, 10.9743, 11.9486),
        ("M12", 12.3789, 13.1367, 14.2733),
    ];
    let inch = [
        ("1/4-20", 0.26083, 0.28248, 0.31495),
        ("5/16-18", 0.32453, 0.34858, 0.38467),
        ("3/8-16", 0.38853, 0.41559, 0.45619),
    ];
    let metric = holes.map(|hole| (hole, 1.0, 6e-5));
    for ((name, minor, pitch, major), unit_mm, within) in metric
        .into_iter()
        .chain(inch.map(|hole| (hole, INCH_MM, 6e-6)))
    {
        let got = insert_hole(&thread(name));
        assert_near(name, got.minor_mm / unit_mm, minor, within);
        assert_near(name, got.pitch_diameter_mm / unit_mm, pitch, within);
        assert_near(name, got.major_mm / unit_mm, major, within);
        let drill_mm = got.drill.diameter_mm;
        assert!(
            (got.minor_mm..got.pitch_diameter_mm).contains(&drill_mm),
            "{name}: {drill_mm}"
        );
    }
}

/// ISO 965-1, in µm: deviation g 15 + 11 P; grade 6: bolt's major diameter
/// 180 P^(2/3) - 3.15/√P, its pitch diameter 90 P^0.4 d^0.1, hole's pitch diameter 1.32 of that,
/// hole's minor diameter 230 P^0.7. `d` is the geometric mean of a range of diameters. The standard
/// rounds each to a preferred number, which lie 6 % apart, and not always to the nearest.
#[test]
fn tolerances_follow_their_formulas() {
    let ranges = [
        (
            5.6_f64,
            ["M6", "M8", "M8x1", "M10", "M10x1.25", "M10x1"].as_slice(),
        ),
        (
            11.2,
            ["M12", "M12x1.5", "M12x1.25", "M14", "M14x1.5"].as_slice(),
        ),
    ];
    for (from, names) in ranges {
        let mean = (from * 2.0 * from).sqrt();
        for name in names {
            let thread = thread(name);
            let (sizes, limits) = (thread.geometry(), limits(&thread));
            let p = thread.pitch_mm();
            let near = |got_mm: f64, expected: f64| {
                assert_near(name, got_mm * 1000.0, expected, 0.06 * expected);
            };
            let deviation = sizes.pitch_diameter_mm - limits.bolt_pitch_max_mm;
            assert_near(name, deviation * 1000.0, 15.0 + 11.0 * p, 1.1);
            let bolt_major = sizes.major_mm - deviation - limits.bolt_major_min_mm;
            near(bolt_major, 180.0 * p.powf(2.0 / 3.0) - 3.15 / p.sqrt());
            let pitch = 90.0 * p.powf(0.4) * mean.powf(0.1);
            near(limits.bolt_pitch_max_mm - limits.bolt_pitch_min_mm, pitch);
            near(
                limits.hole_pitch_max_mm - sizes.pitch_diameter_mm,
                1.32 * pitch,
            );
            near(
                limits.hole_minor_max_mm - sizes.minor_diameter_mm,
                230.0 * p.powf(0.7),
            );
        }
    }
}

/// FED-STD-H28/2: for each length of engagement, bolt π Kn (1/2 + (Es - Kn)/(√3 P)), hole
/// π Ds (1/2 + (Ds - En)/(√3 P)). The metric limits are those of 6g in 6H.
#[test]
fn stripping_areas_follow_the_federal_standard() {
    let areas = [
        ("M6", 8.6467, 12.1858),
        ("M8", 12.1636, 16.8274),
        ("M10", 15.5749, 21.4802),
        ("M12", 18.9838, 26.1131),
    ];
    for (name, bolt, hole) in areas {
        let got = shear_areas(&thread(name));
        assert_near(name, got.bolt_mm2_per_mm, bolt, 0.002);
        assert_near(name, got.hole_mm2_per_mm, hole, 0.002);
    }
    let pitch_mm = INCH_MM / 20.0;
    let bolt = bolt_shear_mm2_per_mm(pitch_mm, 0.2070 * INCH_MM, 0.2127 * INCH_MM) / INCH_MM;
    let hole = hole_shear_mm2_per_mm(pitch_mm, 0.2408 * INCH_MM, 0.2224 * INCH_MM) / INCH_MM;
    assert_near("1/4-20, bolt, in2/in", bolt, 0.36796, 6e-6);
    assert_near("1/4-20, hole, in2/in", hole, 0.53898, 6e-6);
}

/// Proof loads where no table was read: stress area times proof stress. The metric figures take
/// the area as ISO 898-1 rounds it, ours is not rounded.
#[test]
fn proof_loads_are_area_times_stress() {
    let metric = [
        ("M8x1", [22_736.0, 32_536.0, 38_024.0]),
        ("M10x1.25", [35_496.0, 50_796.0, 59_364.0]),
        ("M10x1", [37_410.0, 53_535.0, 62_565.0]),
        ("M12x1.25", [53_418.0, 76_443.0, 89_337.0]),
    ];
    for (name, loads) in metric {
        let classes = [Class::C8_8, Class::C10_9, Class::C12_9];
        for (class, expected) in classes.into_iter().zip(loads) {
            let got = class.loads(&thread(name)).unwrap().proof_n.unwrap();
            assert_near(name, got, expected, 0.002 * expected);
        }
    }
    let inch = [
        ("1/4-20", [1750.0, 2705.0, 3818.0]),
        ("5/16-18", [2884.0, 4457.0, 6292.0]),
        ("3/8-16", [4262.0, 6587.0, 9299.0]),
        ("7/16-14", [5847.0, 9036.0, 12_757.0]),
        ("1/2-13", [7804.0, 12_061.0, 17_028.0]),
    ];
    for (name, loads) in inch {
        for (class, expected) in ["grade 2", "grade 5", "grade 8"].into_iter().zip(loads) {
            let loads = Class::read(class).unwrap().loads(&thread(name)).unwrap();
            assert_near(name, loads.proof_n.unwrap() / LBF_N, expected, 1.0);
        }
    }
}

/// Pitch, thread and head: the long forms of Motosh and of ISO 16047.
#[test]
fn both_long_forms_add_up() {
    let m12 = Joint::new(&Thread::metric(12.0, 1.75).unwrap(), 22.5, 13.5).unwrap();
    let m10 = Joint::standard(&Thread::metric(10.0, 1.5).unwrap(), Head::Hex).unwrap();
    let m6 = Joint::standard(&Thread::metric(6.0, 1.0).unwrap(), Head::Hex).unwrap();
    let cases = [
        (&m12, 0.15, 1000.0, 2.56931, 2.58024),
        (&m10, 0.15, 25_275.0, 50.05418, 50.29266),
        (&m6, 0.12, 8700.0, 8.65517, 8.69348),
    ];
    for (joint, coefficient, clamp_n, motosh, iso) in cases {
        let friction = Friction::both(coefficient).unwrap();
        for (form, expected) in [(Form::Motosh, motosh), (Form::Iso16047, iso)] {
            let torque_nm = torque_for_clamp(joint, friction, clamp_n, form).total_nm;
            assert!(
                (torque_nm - expected).abs() < 1e-5,
                "{form:?}: {torque_nm} for {expected}"
            );
            let back = clamp_for_torque(joint, friction, torque_nm, form);
            assert!((back / clamp_n - 1.0).abs() < 1e-12);
        }
    }
}
