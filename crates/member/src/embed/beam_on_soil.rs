//! How does a straight beam move that is pushed at one end and leans on springs over its length? Finite elements.

/// A stretch of the beam, from its upper to its lower end; z grows downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Stretch {
    /// Length, m.
    pub length: f64,
    /// Bending stiffness, kNm².
    pub stiffness: f64,
    /// Springs at its upper and lower end, kN/m per metre of movement; straight between.
    pub springs: (f64, f64),
}

/// Movement at one point: aside, and its slope (growing downwards).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct At {
    /// Aside, m.
    pub aside: f64,
    /// dy/dz.
    pub slope: f64,
    /// Bending moment, kNm.
    pub moment: f64,
}

type Block = [[f64; 4]; 4];
/// Half of the width of the band: two freedoms at each of two points.
const BAND: usize = 4;

/// Stiffness of one stretch: Hermite cubic, with its springs by four Gauss points (exact for springs that grow evenly).
fn block(s: &Stretch) -> Block {
    let (l, ei) = (s.length, s.stiffness);
    let c = ei / (l * l * l);
    let mut k = [
        [12.0 * c, 6.0 * l * c, -12.0 * c, 6.0 * l * c],
        [6.0 * l * c, 4.0 * l * l * c, -6.0 * l * c, 2.0 * l * l * c],
        [-12.0 * c, -6.0 * l * c, 12.0 * c, -6.0 * l * c],
        [6.0 * l * c, 2.0 * l * l * c, -6.0 * l * c, 4.0 * l * l * c],
    ];
    if s.springs == (0.0, 0.0) {
        return k;
    }
    for (point, weight) in GAUSS {
        let t = (1.0 + point) / 2.0;
        let spring = (s.springs.0 + (s.springs.1 - s.springs.0) * t) * weight * l / 2.0;
        let n = [
            1.0 - 3.0 * t * t + 2.0 * t * t * t,
            l * t * (1.0 - t) * (1.0 - t),
            t * t * (3.0 - 2.0 * t),
            l * t * t * (t - 1.0),
        ];
        for (row, a) in k.iter_mut().zip(n) {
            for (cell, b) in row.iter_mut().zip(n) {
                *cell += spring * a * b;
            }
        }
    }
    k
}

const GAUSS: [(f64, f64); 4] = [
    (-0.861_136_311_594_052_6, 0.347_854_845_137_453_85),
    (-0.339_981_043_584_856_26, 0.652_145_154_862_546_1),
    (0.339_981_043_584_856_26, 0.652_145_154_862_546_1),
    (0.861_136_311_594_052_6, 0.347_854_845_137_453_85),
];

/// Movements at the ends of all stretches, from top to bottom, under a push at the upper end of stretch `pushed`. `None`
/// where nothing holds the beam.
///
/// # Source
/// Displacement method with cubic beam elements on springs, e.g. Bowles, Foundation Analysis and Design, 5th ed., 16-15; solved
/// by Cholesky in its LDLᵀ form within the band.
pub(super) fn pushed(stretches: &[Stretch], pushed: usize, force: f64) -> Option<Vec<At>> {
    let n = 2 * (stretches.len() + 1);
    // Row i holds its own and the next three columns.
    let mut band = vec![[0.0; BAND]; n];
    let mut load = vec![0.0; n];
    let blocks: Vec<Block> = stretches.iter().map(block).collect();
    for (e, k) in blocks.iter().enumerate() {
        for (i, row) in k.iter().enumerate() {
            for (j, cell) in row.iter().enumerate().skip(i) {
                band[2 * e + i][j - i] += cell;
            }
        }
    }
    load[2 * pushed] = force;
    solve(&mut band, &mut load)?;
    let mut found: Vec<At> = load.chunks(2).map(|u| At { aside: u[0], slope: u[1], moment: 0.0 }).collect();
    for (e, k) in blocks.iter().enumerate() {
        let u = &load[2 * e..2 * e + 4];
        // The moment that the stretch's upper end passes on; equilibrium of the element, not of its curvature.
        found[e].moment = k[1].iter().zip(u).map(|(k, u)| k * u).sum::<f64>().abs();
    }
    Some(found)
}

/// LDLᵀ within the band, in place; the load becomes the movement.
fn solve(band: &mut [[f64; BAND]], load: &mut [f64]) -> Option<()> {
    let n = load.len();
    for i in 0..n {
        let pivot = band[i][0];
        // A mechanism leaves a pivot that is nothing beside what stood there.
        if pivot.is_nan() || pivot <= 0.0 {
            return None;
        }
        for r in 1..BAND.min(n - i) {
            let share = band[i][r] / pivot;
            for c in r..BAND.min(n - i) {
                let off = share * band[i][c];
                band[i + r][c - r] -= off;
            }
            load[i + r] -= share * load[i];
            band[i][r] = share;
        }
        load[i] /= pivot;
    }
    for i in (0..n).rev() {
        for r in 1..BAND.min(n - i) {
            load[i] -= band[i][r] * load[i + r];
        }
    }
    load.iter().all(|u| u.is_finite()).then_some(())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn even(length: f64, parts: usize, stiffness: f64, springs: impl Fn(f64) -> f64) -> Vec<Stretch> {
        let l = length / parts as f64;
        (0..parts)
            .map(|k| Stretch { length: l, stiffness, springs: (springs(l * k as f64), springs(l * (k + 1) as f64)) })
            .collect()
    }

    #[test]
    fn a_beam_on_even_springs_moves_as_hetenyi_says_whatever_its_length() {
        // Hetényi, Beams on Elastic Foundation (1946), finite beam with free ends, point load at one end.
        let (ei, k) = (500.0, 8000.0f64);
        let beta = (k / (4.0 * ei)).sqrt().sqrt();
        for length in [0.4, 0.9, 1.5, 4.0] {
            let u = beta * length;
            use groundhold_quantity::math::exp;
            let (sh, ch) = ((exp(u) - exp(-u)) / 2.0, (exp(u) + exp(-u)) / 2.0);
            let (s, c) = (groundhold_quantity::math::sin(u), groundhold_quantity::math::cos(u));
            let right = 2.0 * beta / k * (sh * ch - s * c) / (sh * sh - s * s);
            let found = pushed(&even(length, 40, ei, |_| k), 0, 1.0).unwrap()[0].aside;
            assert!((found / right - 1.0).abs() < 1e-5, "{length} {found} {right}");
        }
    }

    #[test]
    fn halving_the_elements_brings_the_answer_nearer_at_the_order_of_the_element() {
        let of = |parts| pushed(&even(3.0, parts, 60.0, |z| 5000.0 * z), 0, 1.0).unwrap()[0].aside;
        let best = of(400);
        let (rough, fine) = ((of(4) - best).abs(), (of(8) - best).abs());
        assert!(fine < rough / 8.0, "{rough} {fine}");
        assert!((of(48) / best - 1.0).abs() < 1e-5);
    }

    #[test]
    fn a_beam_that_nothing_holds_has_no_answer() {
        let loose = pushed(&even(1.0, 1, 100.0, |_| 0.0), 0, 1.0);
        assert!(loose.is_none_or(|u| 1e6 < u[0].aside.abs()));
    }
}
