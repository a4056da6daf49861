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

// kept holds things by name, each made the first time it is asked for. The zero value is ready.
type kept[V any] struct {
	lock sync.Mutex
	made map[string]func() V
}

func (k *kept[V]) of(name string, find func() V) V {
	k.lock.Lock()
	if k.made == nil {
		k.made = map[string]func() V{}
	}
	v, ok := k.made[name]
	if !ok {
		v = sync.OnceValue(find)
		k.made[name] = v
	}
	k.lock.Unlock()
	return v()
}
