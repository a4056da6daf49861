package lattice

// A cell is red when the sum of its i, j and k is even, else black; the neighbours of a red cell are
// all black.

// firstRed sets the red cells of a row as if all others were 0, and the black ones to 0.
func (l *level) firstRed(j, k int) {
	x, b, inv := l.sys.slice(l.x, j, k), l.sys.slice(l.b, j, k), l.sys.slice(l.inv, j, k)
	clear(x)
	for i := (j + k) & 1; i < len(x); i += 2 {
		x[i] = b[i] * inv[i]
	}
}

// smooth balances the cells of one colour (0 red, 1 black) in a row.
func (l *level) smooth(j, k, colour int) {
	a := l.sys.around(j, k, l.zeros)
	n, nx := a.here, l.sys.X
	x := l.x[n-1 : n+nx+1]
	south, north := l.x[a.southAt:a.southAt+nx], l.x[a.northAt:a.northAt+nx]
	down, up := l.x[a.downAt:a.downAt+nx], l.x[a.upAt:a.upAt+nx]
	cs, cn, cd, cu := a.south[:nx], a.north[:nx], a.down[:nx], a.up[:nx]
	b, inv, east := l.b[n:n+nx], l.inv[n:n+nx], a.east[:nx+1]
	for i := (j + k + colour) & 1; i < len(b); i += 2 {
		v := b[i] + east[i]*x[i] + east[i+1]*x[i+2]
		v += cs[i]*south[i] + cn[i]*north[i]
		v += cd[i]*down[i] + cu[i]*up[i]
		x[i+1] = v * inv[i]
	}
}

// left puts the residual of a row into r when black cells were balanced last and red ones were
// balanced against black ones of 0: what the black neighbours send.
func (l *level) left(r []float32, j, k int) {
	a := l.sys.around(j, k, l.zeros)
	n, nx := a.here, l.sys.X
	x := l.x[n-1 : n+nx+1]
	south, north := l.x[a.southAt:a.southAt+nx], l.x[a.northAt:a.northAt+nx]
	down, up := l.x[a.downAt:a.downAt+nx], l.x[a.upAt:a.upAt+nx]
	cs, cn, cd, cu := a.south[:nx], a.north[:nx], a.down[:nx], a.up[:nx]
	east := a.east[:nx+1]
	clear(r)
	for i := (j + k) & 1; i < len(r); i += 2 {
		v := east[i]*x[i] + east[i+1]*x[i+2]
		v += cs[i]*south[i] + cn[i]*north[i]
		v += cd[i]*down[i] + cu[i]*up[i]
		r[i] = v
	}
}
