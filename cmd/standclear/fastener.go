package main

import (
	"fmt"

	"github.com/spf13/pflag"

	"standclear/detail/check/strength"
	"standclear/detail/unit"
)

// given are the flags of the fastener command as typed.
type given struct {
	kind, diameter, side, thread, gap, yield                          string
	sideBearing, mainBearing                                          string
	sideGravity, mainGravity, sideAngle, mainAngle, gravity, duration float64
	wet, withdrawal, asJSON                                           bool
}

func (g *given) flags(f *pflag.FlagSet) {
	f.StringVar(&g.kind, "kind", "", "bolt, lag or screw")
	f.StringVar(&g.diameter, "diameter", "", "nominal diameter, 1/2in or 12mm")
	f.StringVar(&g.sideBearing, "side-bearing", "", "length of the dowel in the side member, without the tip")
	f.StringVar(&g.side, "side", "wood", "wood or steel")
	f.Float64Var(&g.sideGravity, "side-gravity", 0, "specific gravity of the side member")
	f.Float64Var(&g.sideAngle, "side-angle", 0, "degrees from the load to the grain, 0 to 90")
	f.StringVar(&g.mainBearing, "main-bearing", "", "length of the dowel in the main member, without the tip")
	f.Float64Var(&g.mainGravity, "main-gravity", 0, "specific gravity of the main member")
	f.Float64Var(&g.mainAngle, "main-angle", 0, "degrees from the load to the grain, 0 to 90")
	f.StringVar(&g.gap, "gap", "0in", "between the members, where nothing bears on the dowel")
	f.StringVar(&g.yield, "yield", "", "bending yield strength, 45000psi or 310MPa; left out: by kind and diameter")
	f.Float64Var(&g.duration, "duration", 1, "load duration factor, 0.9 to 1.6")
	f.BoolVar(&g.wet, "wet", false, "in service above 19 % moisture; dry when left out")
	f.BoolVar(&g.withdrawal, "withdrawal", false, "the withdrawal value from side grain")
	f.Float64Var(&g.gravity, "gravity", 0, "specific gravity of the wood that holds the thread")
	f.StringVar(&g.thread, "thread", "", "length of thread in that wood, without the tip")
	f.BoolVar(&g.asJSON, "json", false, "print JSON, every value in both unit systems")
	f.VisitAll(func(x *pflag.Flag) {
		if takes(x) {
			holds(f, x.Name)
		}
	})
	holds(f, "kind", "bolt", "lag", "screw")
	holds(f, "side", "wood", "steel")
}

// fastener prints the design values of one fastener in one shear plane, or pulled out.
func fastener(e env, args []string) int {
	f := pflag.NewFlagSet("fastener", pflag.ContinueOnError)
	var g given
	g.flags(f)
	if code, ok := parse(e, f, "standclear fastener\nprints every yield mode of one fastener in single shear, its reference and its adjusted value, or its withdrawal value.",
		"  standclear fastener --kind bolt --diameter 1/2in --side-bearing 1.5in --side-gravity 0.55 --side-angle 90 --main-bearing 1.5in --main-gravity 0.43 --main-angle 90 --gap 0.5in\n  standclear fastener --kind lag --diameter 1/2in --withdrawal --gravity 0.43 --thread 1.5in\n", args); !ok {
		return code
	}
	c, wrong := g.read(f)
	for _, w := range append(wrong, unwanted(f.Args())...) {
		fmt.Fprintf(e.err, "standclear fastener: %s\n", w)
	}
	if len(wrong)+len(f.Args()) > 0 {
		return exitInput
	}
	out := c.values()
	if err := out.write(e, g.asJSON, c); err != nil {
		fmt.Fprintf(e.err, "standclear fastener: could not write: %v\n", err)
		return exitWrite
	}
	return exitOK
}

func unwanted(args []string) []string {
	if len(args) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("%q is no flag; everything is given by flags (--help lists them)", args[0])}
}

// fastenerCase is what the flags say, in units.
type fastenerCase struct {
	dowel          strength.Dowel
	lateral        bool
	side, main     strength.Member
	gap            unit.Length
	wet            bool
	duration       float64
	pulled         bool
	gravity        float64
	thread         unit.Length
	penetrationMin unit.Length // of the main member
}

// read turns the flags into a case, or lists every one that cannot be used.
func (g *given) read(f *pflag.FlagSet) (c fastenerCase, wrong []string) {
	bad := func(flag string, got any, allowed string) {
		wrong = append(wrong, fmt.Sprintf("--%s: given %v; %s", flag, got, allowed))
	}
	length := func(flag, v string, zero bool) unit.Length {
		if v == "" {
			bad(flag, "nothing", "a length with its unit is needed, such as 1.5in or 38mm")
			return 0
		}
		l, err := unit.ParseLength(v)
		switch {
		case err != nil:
			wrong = append(wrong, fmt.Sprintf("--%s: %v", flag, err))
		case l < 0 || l == 0 && !zero:
			bad(flag, v, map[bool]string{false: "more than 0 is needed", true: "0 or more is needed"}[zero])
		case l > 60*unit.Inch:
			bad(flag, v, "at most 60in (1524mm) is allowed")
		}
		return l
	}
	within := func(flag string, v, low, high float64, what string) {
		if !(v >= low && v <= high) {
			bad(flag, v, fmt.Sprintf("%s from %g to %g is needed", what, low, high))
		}
	}
	kinds := map[string]strength.Kind{"bolt": strength.Bolt, "lag": strength.Lag, "screw": strength.Screw}
	kind, ok := kinds[g.kind]
	if !ok {
		bad("kind", orNothing(g.kind), "bolt, lag or screw is needed")
	}
	d := length("diameter", g.diameter, false)
	var fyb unit.Pressure
	if g.yield != "" {
		v, err := unit.ParsePressure(g.yield)
		if err != nil {
			wrong = append(wrong, fmt.Sprintf("--yield: %v", err))
		} else if v <= 0 {
			bad("yield", g.yield, "more than 0 is needed")
		}
		fyb = v
	}
	if ok && d > 0 {
		if c.dowel, ok = strength.DowelOf(kind, d, fyb); !ok {
			bad("diameter", g.diameter, sizes(kind))
		}
	}
	for _, x := range idle(g, f) {
		bad(x, "too", "it does not apply to what is asked for; take it out")
	}
	within("duration", g.duration, 0.9, 1.6, "a factor")
	c.wet, c.duration, c.pulled = g.wet, g.duration, g.withdrawal
	c.lateral = !g.withdrawal || f.Changed("side-bearing") || f.Changed("main-bearing")
	if c.lateral {
		g.readLateral(&c, d, length, within, bad)
	}
	if c.pulled {
		within("gravity", g.gravity, leastGravity, mostGravity, "a specific gravity")
		c.gravity = g.gravity
		if g.thread != "" {
			c.thread = length("thread", g.thread, false)
		}
		if kind == strength.Bolt && g.kind == "bolt" {
			bad("withdrawal", "with --kind bolt", "only lag and screw hold by their thread")
		}
	}
	return c, wrong
}

// idle lists the flags that were given and change nothing.
func idle(g *given, f *pflag.FlagSet) (out []string) {
	lateral := !g.withdrawal || f.Changed("side-bearing") || f.Changed("main-bearing")
	for _, x := range []struct {
		flag string
		used bool
	}{
		{"gravity", g.withdrawal}, {"thread", g.withdrawal}, {"gap", lateral}, {"yield", lateral}, {"side", lateral}, {"main-gravity", lateral}, {"main-angle", lateral},
		{"side-gravity", lateral && g.side != "steel"}, {"side-angle", lateral && g.side != "steel"},
	} {
		if f.Changed(x.flag) && !x.used {
			out = append(out, x.flag)
		}
	}
	return out
}

// Specific gravities of the woods the bearing tables list, with some room.
const leastGravity, mostGravity = 0.3, 0.8

func (g *given) readLateral(c *fastenerCase, d unit.Length, length func(string, string, bool) unit.Length, within func(string, float64, float64, float64, string), bad func(string, any, string)) {
	ls, lm := length("side-bearing", g.sideBearing, false), length("main-bearing", g.mainBearing, false)
	c.gap = length("gap", g.gap, true)
	within("main-gravity", g.mainGravity, leastGravity, mostGravity, "a specific gravity")
	within("main-angle", g.mainAngle, 0, 90, "an angle in degrees")
	c.main = strength.Member{Bearing: lm, Fe: strength.DowelBearing(g.mainGravity, d, g.mainAngle), Angle: g.mainAngle}
	switch g.side {
	case "wood":
		within("side-gravity", g.sideGravity, leastGravity, mostGravity, "a specific gravity")
		within("side-angle", g.sideAngle, 0, 90, "an angle in degrees")
		c.side = strength.Member{Bearing: ls, Fe: strength.DowelBearing(g.sideGravity, d, g.sideAngle), Angle: g.sideAngle}
	case "steel":
		c.side = strength.Member{Bearing: ls, Fe: strength.SteelBearing}
		if ls < unit.Inch/4 {
			c.side.Fe = strength.SheetSteelBearing
		}
	default:
		bad("side", g.side, "wood or steel is needed")
	}
	switch c.dowel.Kind {
	case strength.Lag:
		c.penetrationMin = 4 * d
	case strength.Screw:
		c.penetrationMin = 6 * d
	}
}

// sizes says which diameters the tables list.
func sizes(k strength.Kind) string {
	switch k {
	case strength.Lag:
		return "a lag screw from 1/4in to 1in as listed in NDS 2018 appendix L2 is needed"
	case strength.Screw:
		return "a wood screw of No. 6 to No. 24 (0.138in to 0.372in) as listed in NDS 2018 appendix L3 is needed"
	}
	return "a bolt from 1/4in to 1in is needed"
}

func orNothing(s string) string {
	if s == "" {
		return "nothing"
	}
	return s
}
