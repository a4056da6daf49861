package moisture

import (
	"math"

	"standclear/detail/unit"
)

// Saturation of air by ISO 13788:2012 annex E (from memory, confirm): over water from 0 C up, over ice
// below.
const (
	pZero            = 610.5 // Pa, at 0 C
	aWater, bWater   = 17.269, 237.3
	aFrost, bFrost   = 21.875, 265.5
	vapourInAir      = 2.0e-10     // kg/(m s Pa), diffusion in still air: ISO 13788 (from memory, confirm)
	perm             = 5.72135e-11 // kg/(m2 s Pa), one US perm
	secondsPerMonth  = 365.0 / 12 * 86400
	wettestRoomShare = 0.8 // RH at a surface above which mould grows: ISO 13788 (from memory, confirm)
)

// saturation returns the vapour pressure of saturated air, Pa, at t C.
func saturation(t float64) float64 {
	if t < 0 {
		return pZero * math.Exp(aFrost*t/(bFrost+t))
	}
	return pZero * math.Exp(aWater*t/(bWater+t))
}

// DewPoint returns the temperature at which air of that temperature and relative humidity drops its water.
func DewPoint(air unit.Temp, humidity unit.Percent) unit.Temp {
	return unit.Temp(dewPoint(float64(humidity) * saturation(float64(air))))
}

// dewPoint returns the temperature, C, at which air of vapour pressure p, Pa, is saturated. At p/rh it is
// the temperature at which that air has the relative humidity rh.
func dewPoint(p float64) float64 {
	x := math.Log(p / pZero)
	if p < pZero {
		return bFrost * x / (aFrost - x)
	}
	return bWater * x / (aWater - x)
}
