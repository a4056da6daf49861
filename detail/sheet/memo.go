package sheet

import "sync"

// memo remembers what a pure function gave: tables are measured again and again while a place for them is looked for.
type memo[K comparable, V any] struct {
	lock sync.Mutex
	kept map[K]V
}

// mostKept bounds a memo; beyond it everything is forgotten.
const mostKept = 1 << 15

func (m *memo[K, V]) of(k K, find func() V) V {
	m.lock.Lock()
	v, ok := m.kept[k]
	m.lock.Unlock()
	if ok {
		return v
	}
	v = find()
	m.lock.Lock()
	if m.kept == nil || len(m.kept) >= mostKept {
		m.kept = map[K]V{}
	}
	m.kept[k] = v
	m.lock.Unlock()
	return v
}
