// Package together does many things of one kind at the same time.
package together

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// Each calls f with 0 to n-1, on as many goroutines as the program may run, its own among them, and returns when all are
// done. When one of them panics, the rest is left out and Each panics with its value.
func Each(n int, f func(i int)) {
	var next atomic.Int64
	var failed atomic.Pointer[any]
	var wg sync.WaitGroup
	work := func() {
		defer func() {
			if r := recover(); r != nil {
				failed.CompareAndSwap(nil, &r)
			}
		}()
		for failed.Load() == nil {
			i := int(next.Add(1)) - 1
			if i >= n {
				return
			}
			f(i)
		}
	}
	for range min(n, runtime.GOMAXPROCS(0)) - 1 {
		wg.Go(work)
	}
	work()
	wg.Wait()
	if r := failed.Load(); r != nil {
		panic(*r)
	}
}
