package casefile

import (
	"fmt"
	"strings"

	"go.yaml.in/yaml/v3"

	"standclear/detail/heat"
	"standclear/detail/keyfile"
)

// read fills the case from the root of the file.
func (r *reader) read(root *yaml.Node) {
	keys := r.Keyed(root, "", "name", "dimensions", "materials", "environments", "boxes", "rods", "probes")
	c := &r.file.Case
	r.note(heat.InCase, root, "")
	if n := keys["name"]; n != nil {
		c.Name, _ = r.One(n, "name", "")
	}
	c.Dim = r.dimensions(root, keys["dimensions"])
	if c.Dim == 0 {
		return
	}
	for _, part := range []struct {
		name string
		need bool
		read func(n *yaml.Node)
	}{
		{"materials", true, r.materials}, {"environments", true, r.envs}, {"boxes", true, r.boxes},
		{"rods", false, r.rods}, {"probes", false, r.probes},
	} {
		if n := keys[part.name]; n != nil {
			part.read(n)
		} else if part.need && (root.Kind == yaml.MappingNode) {
			r.Fail(root, part.name, "it is not given", "a case needs materials, environments and boxes", "")
		}
	}
}

func (r *reader) note(p heat.Part, n *yaml.Node, path string) {
	r.file.parts[p] = append(r.file.parts[p], place{n, path})
}

func (r *reader) dimensions(root, n *yaml.Node) int {
	const allowed = "2 (flows per metre of depth) or 3 is needed"
	if n == nil {
		if root.Kind == yaml.MappingNode {
			r.Fail(root, "dimensions", "it is not given", allowed, "")
		}
		return 0
	}
	text, ok := r.One(n, "dimensions", allowed)
	switch {
	case text == "2":
		return 2
	case text == "3":
		return 3
	case ok:
		r.Fail(n, "dimensions", fmt.Sprintf("%q is not allowed", keyfile.Cut(text)), allowed, "")
	}
	return 0
}

func (r *reader) materials(n *yaml.Node) {
	for _, row := range r.Section(n, "materials", "it holds name: conductivity") {
		path := keyfile.Join("materials", keyfile.Cut(row.Name))
		r.note(heat.InMaterial, row.Key, path)
		r.file.Case.Materials = append(r.file.Case.Materials, r.material(row.Name, row.Val, path))
	}
}

func (r *reader) material(name string, n *yaml.Node, path string) heat.Material {
	dim := r.file.Case.Dim
	switch n.Kind {
	case yaml.SequenceNode:
		m := heat.Isotropic(name, 1)
		items := r.List(n, path, conductivity().forms)
		if len(items) != dim {
			r.Fail(n, path, fmt.Sprintf("a list of %d", len(items)), fmt.Sprintf("one conductivity for each of %s is needed", strings.Join(axes(dim), ", ")), "")
			return m
		}
		for a, item := range items {
			m.K[a] = r.figure(item, keyfile.Join(path, fmt.Sprint(a)), conductivity())
		}
		return m
	case yaml.MappingNode:
		return r.air(name, n, path)
	}
	return heat.Isotropic(name, r.figure(n, path, conductivity()))
}

// air reads a closed layer of air.
func (r *reader) air(name string, n *yaml.Node, path string) heat.Material {
	keys := r.Keyed(n, path, "air", "flow")
	if keys["air"] == nil || keys["flow"] == nil {
		r.Fail(n, path, "air or flow is not given", "a closed layer of air is {air: 25mm, flow: sideways}", "")
		return heat.Material{}
	}
	d := r.length(keys["air"], keyfile.Join(path, "air"))
	text, _ := r.One(keys["flow"], keyfile.Join(path, "flow"), "upward, downward or sideways is needed")
	h, known := map[string]heat.Heading{"sideways": heat.Sideways, "upward": heat.Upward, "downward": heat.Downward}[text]
	if !known {
		r.Fail(keys["flow"], keyfile.Join(path, "flow"), fmt.Sprintf("%q is not allowed", keyfile.Cut(text)), "upward, downward or sideways is needed", "")
	}
	m, ok := heat.AirLayer(name, d, h)
	if !ok {
		r.Fail(keys["air"], keyfile.Join(path, "air"), fmt.Sprintf("a layer of %g mm", d), "more than 0 to 300 mm is in ISO 6946:2017 table 8", "")
	}
	return m
}

func (r *reader) envs(n *yaml.Node) {
	for _, row := range r.Section(n, "environments", "it holds name: {temperature, resistance}") {
		path := keyfile.Join("environments", keyfile.Cut(row.Name))
		r.note(heat.InEnv, row.Key, path)
		keys := r.Keyed(row.Val, path, "temperature", "resistance", "coefficient")
		e := heat.Env{Name: row.Name}
		if t := keys["temperature"]; t != nil {
			e.T = r.temperature(t, keyfile.Join(path, "temperature"))
		} else if row.Val.Kind == yaml.MappingNode {
			r.Fail(row.Key, keyfile.Join(path, "temperature"), "it is not given", "a temperature is written 20C or 68F", "")
		}
		e.Rs = r.film(row, keys, path)
		r.file.Case.Envs = append(r.file.Case.Envs, e)
	}
}

// film reads the surface resistance of an environment, which may be given as its coefficient.
func (r *reader) film(row keyfile.Row, keys map[string]*yaml.Node, path string) float64 {
	rs, h := keys["resistance"], keys["coefficient"]
	switch {
	case rs != nil && h != nil:
		r.Fail(h, keyfile.Join(path, "coefficient"), "resistance is given too", "", "keep one of the two")
	case rs != nil:
		return r.figure(rs, keyfile.Join(path, "resistance"), resistance())
	case h != nil:
		if v := r.figure(h, keyfile.Join(path, "coefficient"), coefficient()); v > 0 {
			return heat.FilmRs(v)
		}
		r.Fail(h, keyfile.Join(path, "coefficient"), fmt.Sprintf("%q is not more than 0", keyfile.Cut(h.Value)), coefficient().forms, "")
	case row.Val.Kind == yaml.MappingNode:
		r.Fail(row.Key, keyfile.Join(path, "resistance"), "it is not given", resistance().forms, "0 m2K/W holds the surface at the temperature")
	}
	return 0
}

func (r *reader) probes(n *yaml.Node) {
	dim := r.file.Case.Dim
	for _, row := range r.Section(n, "probes", "it holds name: [x, y, z]") {
		path := keyfile.Join("probes", keyfile.Cut(row.Name))
		r.note(heat.InProbe, row.Key, path)
		p := heat.Probe{Name: row.Name}
		items := r.List(row.Val, path, "a point is a list of "+strings.Join(axes(dim), ", "))
		if row.Val.Kind == yaml.SequenceNode && len(items) != dim {
			r.Fail(row.Val, path, fmt.Sprintf("a list of %d", len(items)), "a point is a list of "+strings.Join(axes(dim), ", "), "")
			items = nil
		}
		for a, item := range items {
			p.At[a] = r.length(item, keyfile.Join(path, fmt.Sprint(a)))
		}
		r.file.Case.Probes = append(r.file.Case.Probes, p)
	}
}

func axes(dim int) []string { return []string{"x", "y", "z"}[:dim] }
