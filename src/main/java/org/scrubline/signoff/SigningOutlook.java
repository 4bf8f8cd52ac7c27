package org.scrubline.signoff;

import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.SignedIn;

/** What signing a sheet now would bring with it. */
public interface SigningOutlook {

    /** For the sheet's own scorer; {@code NotFound} for everyone else. */
    Outlook of(SignedIn scorer, UUID sheetId);

    /**
     * How a signature of this moment would stand.
     *
     * @param late it would be a late entry
     * @param lateAfter the time after the end of the case from which it is
     * @param left time until signing is closed; negative once it is
     * @param release the director's release; null without one
     * @param countersign why a second supervisor would have to sign too; empty when none has to
     */
    record Outlook(
            boolean late,
            Duration lateAfter,
            Duration left,
            SignedContent.@Nullable Release release,
            List<CountersignReason> countersign) {

        private static final Duration SOON = Duration.ofDays(3);

        public Outlook {
            countersign = List.copyOf(countersign);
        }

        /** Whether signing will be closed within three days. */
        public boolean closesSoon() {
            return release == null && !left.isNegative() && left.compareTo(SOON) <= 0;
        }

        /** Whole hours until signing is closed; 0 in the last one. */
        public long hoursLeft() {
            return Math.max(0, left.toHours());
        }
    }
}
