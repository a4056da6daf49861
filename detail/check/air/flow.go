package air

import "math"

// channel is a flat gap of air that runs upward, in metres.
//
//	|   |  ->  head
//	| ^ |
//	| | |      height
//	|   |
//	 ->        foot
type channel struct {
	depth, height float64
	foot, head    float64 // net height of the openings: m2 for a metre of wall; an end as open as the gap is deep is free
}

// weather is the air outside and what drives it through a channel.
type weather struct {
	outside  float64 // C
	humidity float64 // relative, 0 to 1
	warmer   float64 // air in the channel over the air outside, K
	wind     float64 // pressure between the two openings, Pa
}

const (
	kelvin   = 273.15
	pressure = 101325.0 // Pa, at sea level
	dryAir   = 287.05   // gas constant, J/(kg K)
	vapour   = 461.5    // gas constant, J/(kg K)
	slot     = 0.6      // discharge of a sharp-edged opening (handbook hydraulics, from memory, confirm)
	ends     = 1.5      // velocity heads lost where air enters, 0.5, and leaves, 1.0 (the same)
	sherwood = 4.86     // of a channel between flat plates, one of them wet (heat transfer handbooks, from memory, confirm)
)

// density of air, kg/m3, at t C.
func density(t float64) float64 { return pressure / (dryAir * (t + kelvin)) }

// viscosity of air, Pa s, at t C, by Sutherland's law (from memory, confirm).
func viscosity(t float64) float64 {
	k := t + kelvin
	return 1.716e-5 * math.Pow(k/kelvin, 1.5) * (kelvin + 110.4) / (k + 110.4)
}

// saturation is the pressure of saturated vapour, Pa, at t C: ISO 13788 annex E (from memory, confirm).
func saturation(t float64) float64 {
	if t < 0 {
		return 610.5 * math.Exp(21.875*t/(265.5+t))
	}
	return 610.5 * math.Exp(17.269*t/(237.3+t))
}

// diffusion of water vapour in air, m2/s, at t C (from memory, confirm).
func diffusion(t float64) float64 { return 2.31e-5 * math.Pow((t+kelvin)/kelvin, 1.81) }

// room is what the air outside can still take up, kg/m3, from a wet face as cold as it is.
func (w weather) room() float64 {
	return saturation(w.outside) / (vapour * (w.outside + kelvin)) * (1 - w.humidity)
}

// drive is the pressure that moves the air, Pa: warm air rises, and the wind presses on one end.
func (c channel) drive(w weather) float64 {
	const g = 9.81
	return g*c.height*(density(w.outside)-density(w.outside+w.warmer)) + w.wind
}

// loss is the pressure that the mean speed v, m/s, costs in air of density rho and viscosity mu, Pa: friction of the walls, laminar or turbulent (Blasius),
// whichever is more, the two ends, and each opening that is narrower than the gap.
func (c channel) loss(v, rho, mu float64) float64 {
	head := rho / 2 * v * v
	re := 2 * v * c.depth * rho / mu
	turbulent := 0.0
	if re > 0 {
		turbulent = 0.316 / math.Pow(re, 0.25) * c.height / (2 * c.depth) * head
	}
	sum := math.Max(12*mu*c.height*v/(c.depth*c.depth), turbulent) + ends*head
	for _, a := range []float64{c.foot, c.head} {
		if a < c.depth {
			u := v * c.depth / (slot * a)
			sum += rho / 2 * u * u
		}
	}
	return sum
}

// speed is the mean speed of the air in the channel, m/s, where drive and loss balance; 0 for a closed one.
func (c channel) speed(w weather) float64 {
	p := c.drive(w)
	if p <= 0 || c.depth <= 0 || c.foot <= 0 || c.head <= 0 {
		return 0
	}
	rho, mu := density(w.outside), viscosity(w.outside)
	lo, hi := 0.0, 100.0
	for range 60 {
		if mid := (lo + hi) / 2; c.loss(mid, rho, mu) < p {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo
}

// changes is how often in an hour the air of the channel is renewed.
func (c channel) changes(w weather) float64 { return 3600 * c.speed(w) / c.height }

// dries is what the air carries off one wet face of the channel, grams a day for a metre of wall.
func (c channel) dries(w weather) float64 {
	q := c.speed(w) * c.depth
	if q <= 0 {
		return 0
	}
	beta := sherwood * diffusion(w.outside) / (2 * c.depth)
	return perDay(q * w.room() * (1 - math.Exp(-beta*c.height/q)))
}

// still is what leaves a channel closed at one end by diffusion alone, from its middle, grams a day for a metre of wall.
func (c channel) still(w weather) float64 {
	return perDay(diffusion(w.outside) * w.room() * math.Max(0, c.depth) / (c.height / 2))
}

func perDay(kilogramsPerSecond float64) float64 { return kilogramsPerSecond * 86400 * 1000 }
