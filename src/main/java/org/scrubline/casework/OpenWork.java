package org.scrubline.casework;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What the logged cases of a trainee say beyond the signed sheets.
 *
 * @param unsigned ends of the cases with a sheet nobody signed, oldest first, one entry a sheet; a removed sheet stays a
 *     case never scored
 * @param lastOperated when the last case ended that was logged as operated in, wholly or in parts; null without one
 */
public record OpenWork(List<Instant> unsigned, @Nullable Instant lastOperated) {

    public static final OpenWork NONE = new OpenWork(List.of(), null);

    public OpenWork {
        unsigned = List.copyOf(unsigned);
    }

    /** The later of the last signed case and the last case logged as operated in. */
    public Optional<Instant> lastCase(Optional<Instant> lastSigned) {
        return Stream.concat(Stream.ofNullable(lastOperated), lastSigned.stream())
                .max(Instant::compareTo);
    }
}
