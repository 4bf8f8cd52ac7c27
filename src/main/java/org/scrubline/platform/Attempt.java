package org.scrubline.platform;

import java.util.List;
import java.util.function.Function;

/**
 * What came of something a person asked for: a value, or the reasons why not. Exceptions stay for bugs, races and
 * absences.
 *
 * @param <T> the value when it was done
 */
public sealed interface Attempt<T> {

    /** It was done. */
    record Done<T>(T value) implements Attempt<T> {}

    /** It was refused; there is at least one reason and nothing was stored. */
    record Refused<T>(List<Refusal> reasons) implements Attempt<T> {
        public Refused {
            if (reasons.isEmpty()) {
                throw new IllegalArgumentException("a refusal needs a reason");
            }
            reasons = List.copyOf(reasons);
        }
    }

    static <T> Attempt<T> done(T value) {
        return new Done<>(value);
    }

    static <T> Attempt<T> refused(List<Refusal> reasons) {
        return new Refused<>(reasons);
    }

    static <T> Attempt<T> refused(Refusal reason) {
        return new Refused<>(List.of(reason));
    }

    /** Turns either side into one result. */
    default <R> R fold(Function<? super T, ? extends R> done, Function<? super List<Refusal>, ? extends R> refused) {
        if (this instanceof Done<T> success) {
            return done.apply(success.value());
        }
        return refused.apply(((Refused<T>) this).reasons());
    }

    /** Goes on with the value where there is one; the first refusal ends the way. */
    default <R> Attempt<R> then(Function<? super T, Attempt<R>> next) {
        return fold(next, Attempt::refused);
    }

    /** The value; for callers that have checked before and would have found a bug otherwise. */
    default T orThrow() {
        return fold(Function.identity(), reasons -> {
            throw new IllegalStateException("refused: " + reasons);
        });
    }
}
