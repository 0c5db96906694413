package formula

import (
	"errors"
	"math"

	"github.com/expr-lang/expr"
)

// builtins are the language's own functions that we let in.
func builtins() []string { return []string{"min", "max", "abs", "ceil", "floor", "round"} }

// functions are ours, in the order of [ours].
func functions() []string { return []string{"sqrt", "hypot", "sin", "cos", "tan", "atan2"} }

var (
	errDivision = errors.New("a division by zero")
	errRoot     = errors.New("the square root of a negative number")
	errTangent  = errors.New("the tangent of a right angle")
)

// divide is what / means.
const divide = "divide"

// ours are the functions beyond the language's own; angles are in degrees.
func ours() []expr.Option {
	one := func(name string, f func(x float64) (float64, error)) expr.Option {
		return expr.Function(name, func(p ...any) (any, error) { return f(p[0].(float64)) }, new(func(float64) float64))
	}
	two := func(name string, f func(x, y float64) (float64, error)) expr.Option {
		return expr.Function(name, func(p ...any) (any, error) { return f(p[0].(float64), p[1].(float64)) },
			new(func(float64, float64) float64))
	}
	return []expr.Option{
		one("sqrt", func(x float64) (float64, error) {
			if x < 0 {
				return 0, errRoot
			}
			return math.Sqrt(x), nil
		}),
		two("hypot", func(x, y float64) (float64, error) { return math.Hypot(x, y), nil }),
		one("sin", func(x float64) (float64, error) { return sine(x), nil }),
		one("cos", func(x float64) (float64, error) { return sine(x + 90), nil }),
		one("tan", func(x float64) (float64, error) {
			c := sine(x + 90)
			if c == 0 {
				return 0, errTangent
			}
			return sine(x) / c, nil
		}),
		two("atan2", func(y, x float64) (float64, error) { return math.Atan2(y, x) * 180 / math.Pi, nil }),
		two(divide, func(x, y float64) (float64, error) {
			if y == 0 {
				return 0, errDivision
			}
			return x / y, nil
		}),
	}
}

// sine is the sine of degrees, exact at whole right angles.
func sine(degrees float64) float64 {
	d := math.Mod(degrees, 360)
	switch d {
	case 0, 180, -180:
		return 0
	case 90, -270:
		return 1
	case 270, -90:
		return -1
	}
	return math.Sin(d * math.Pi / 180)
}
