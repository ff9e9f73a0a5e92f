//! The one macro behind every quantity: a named `f64` in SI with only the arithmetic that means something.

/// Defines a quantity that adds to itself and scales by plain numbers. The stored unit is named by the
/// two constructor names given, and every other unit is a constructor written beside the type.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $from:ident, $to:ident, $unit:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("From ", $unit, ".")]
            pub const fn $from(value: f64) -> Self {
                Self(value)
            }

            #[doc = concat!("In ", $unit, ".")]
            pub const fn $to(self) -> f64 {
                self.0
            }

            /// Neither infinite nor "not a number".
            pub const fn is_finite(self) -> bool {
                self.0.is_finite()
            }

            /// Without its sign.
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// The smaller of the two.
            pub const fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }

            /// The larger of the two.
            pub const fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }
        }

        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl std::ops::AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }

        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl std::ops::Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(values: I) -> Self {
                values.fold(Self::ZERO, |total, value| total + value)
            }
        }
    };
}

/// Defines `$a * $b = $product`, both ways round, and the two divisions that undo it.
macro_rules! product {
    ($a:ident * $b:ident = $product:ident, $ta:ident, $tb:ident, $fp:ident, $fa:ident, $fb:ident, $tp:ident) => {
        impl std::ops::Mul<$b> for $a {
            type Output = $product;
            fn mul(self, other: $b) -> $product {
                $product::$fp(self.$ta() * other.$tb())
            }
        }

        impl std::ops::Mul<$a> for $b {
            type Output = $product;
            fn mul(self, other: $a) -> $product {
                $product::$fp(self.$tb() * other.$ta())
            }
        }

        impl std::ops::Div<$a> for $product {
            type Output = $b;
            fn div(self, other: $a) -> $b {
                $b::$fb(self.$tp() / other.$ta())
            }
        }

        impl std::ops::Div<$b> for $product {
            type Output = $a;
            fn div(self, other: $b) -> $a {
                $a::$fa(self.$tp() / other.$tb())
            }
        }
    };
}

pub(super) use product;
pub(super) use quantity;
