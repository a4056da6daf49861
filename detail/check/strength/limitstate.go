package strength

import "math"

// press is a stretch of a group that bears at its full strength: depths from the group's face in inches, and
// the sense, 1 where the wood holds the load and -1 where it bears the other way.
type press struct{ from, to, sense float64 }

// pressing returns where a group bears under load p. A stiff dowel is held one way next to the face and the
// other way beyond. With a hinge the wood is crushed from the face to the hinge, and two stretches of equal
// force hold the plastic moment, as far from each other as they can: of the states in balance that one asks
// least of the joints between.
//
//	face |<- p/q ->o<- F ->|       |<- F ->| end
//	     |+++++++++++++++++|.......|-------|     o hinge
func (b bedding) pressing(p, my float64) []press {
	total := b.total()
	end, all := b.crushed(total)
	turn, near := b.crushed((total + p) / 2)
	hinge, spent := b.crushed(p)
	if all-2*near <= my-spent {
		return []press{{0, turn, 1}, {turn, end, -1}}
	}
	f := b.beyondHinge(p, my, (total-p)/2)
	first, _ := b.crushed(p + f)
	last, _ := b.crushed(total - f)
	return []press{{0, hinge, 1}, {hinge, first, 1}, {last, end, -1}}
}

// beyondHinge returns the force of each of two stretches past the hinge that together hold moment my.
func (b bedding) beyondHinge(p, my, most float64) float64 {
	total := b.total()
	_, all := b.crushed(total)
	_, spent := b.crushed(p)
	lo, hi := 0.0, most
	for range 60 {
		f := (lo + hi) / 2
		_, near := b.crushed(p + f)
		_, far := b.crushed(total - f)
		if (all-far)-(near-spent) < my {
			lo = f
		} else {
			hi = f
		}
	}
	return lo
}

// nets returns the net force of each layer of a group from its face, positive where the layer holds the load.
func (b bedding) nets(presses []press) []float64 {
	out := make([]float64, len(b))
	at := 0.0
	for i, s := range b {
		for _, p := range presses {
			if length := math.Min(p.to, at+s.l) - math.Max(p.from, at); length > 0 {
				out[i] += p.sense * s.q * length
			}
		}
		at += s.l
	}
	return out
}

// state is a dowel at the limit that governs it: the load, the moment it may carry there, and the share of its
// strength with which each group bears, 1 but where the other group is crushed first.
type state struct {
	bench
	p, my              float64
	gives              []float64 // couples of the layers between the groups, lb-in
	mainShare, sdShare float64
}

// atLimit returns the state of a dowel whose transfer is t.
func (d Dowel) atLimit(beds []Bed, t Transfer) state {
	s := state{bench: d.bench(beds), p: t.P.Pounds(), my: d.Plastic().PoundInches(), mainShare: 1, sdShare: 1}
	if t.Governs == "turning" {
		s.p, s.my = t.Rigid.Pounds(), math.Inf(1)
	}
	s.p *= 1 - 1e-9 // just inside the limit, which rounding may have passed
	s.gives = make([]float64, len(s.between))
	s.walk(s.p, s.my, func(layer int, couple float64) { s.gives[layer] = couple })
	sum := 0.0
	for _, v := range s.gives {
		sum += v
	}
	// What the groups hold without them, the layers between need not give.
	need := math.Max(0, s.p*s.gap()-s.main.hold(s.p, s.my)-s.side.hold(s.p, s.my))
	if sum > need && sum > 0 {
		for i := range s.gives {
			s.gives[i] *= need / sum
		}
	}
	if need == 0 && s.p > 0 {
		s.ease()
	}
	return s
}

// ease lowers the bearing of the group that is not crushed until the moments of both close: it holds more than
// the other can turn it.
func (s *state) ease() {
	weak, strong, share := s.main.total(), &s.side, &s.sdShare
	if s.side.total() < weak {
		weak, strong, share = s.side.total(), &s.main, &s.mainShare
	}
	full := *strong
	lo, hi := math.Min(1, weak/full.total()), 1.0
	for range 60 {
		mid := (lo + hi) / 2
		*strong = full.scaled(mid)
		if s.main.hold(s.p, s.my)+s.side.hold(s.p, s.my) > s.p*s.gap() {
			hi = mid
		} else {
			lo = mid
		}
	}
	*strong, *share = full.scaled(hi), hi
}

// scaled is a group whose layers bear a share of their strength.
func (b bedding) scaled(share float64) bedding {
	out := make(bedding, len(b))
	for i, s := range b {
		out[i] = s
		out[i].q *= share
	}
	return out
}

// grips returns how far in from each face a layer of strength q and length l bears to give a couple: one way
// at the inner face, the other way at the outer one.
func grips(q, l, couple float64) float64 {
	if q <= 0 {
		return 0
	}
	return (l - math.Sqrt(math.Max(0, l*l-4*couple/q))) / 2
}
