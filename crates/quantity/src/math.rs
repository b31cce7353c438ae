//! Transcendental functions that give the same bits on every machine, by `libm` in plain Rust.

/// Sine of an angle in radians.
pub fn sin(x: f64) -> f64 {
    libm::sin(x)
}
/// Cosine of an angle in radians.
pub fn cos(x: f64) -> f64 {
    libm::cos(x)
}
/// Tangent of an angle in radians.
pub fn tan(x: f64) -> f64 {
    libm::tan(x)
}
/// Inverse sine, radians.
pub fn asin(x: f64) -> f64 {
    libm::asin(x)
}
/// Inverse cosine, radians.
pub fn acos(x: f64) -> f64 {
    libm::acos(x)
}
/// Inverse tangent, radians.
pub fn atan(x: f64) -> f64 {
    libm::atan(x)
}
/// Angle of the vector (x, y), radians anticlockwise from east.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}
/// e to the power x.
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}
/// Natural logarithm.
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}
/// Logarithm to base ten.
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}
/// x to the power y.
pub fn powf(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}
/// Length of the vector (x, y), for ordinary sizes: no guard against squares that overflow (1e154).
pub fn hypot(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}
/// Cube root.
pub fn cbrt(x: f64) -> f64 {
    libm::cbrt(x)
}
