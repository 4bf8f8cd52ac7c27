package org.scrubline.platform;

import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Somebody opened a record of another person, or a list of several. Published after the transaction that read it has
 * ended: the entry is written in one of its own, because reading transactions cannot write.
 *
 * @param about whose record it is; null for a list, which is about nobody in particular
 * @param purpose why a visitor was let in; null for everyone else
 */
public record RecordSeen(
        SignedIn reader,
        @Nullable UUID about,
        UUID programme,
        Item item,
        @Nullable String purpose) implements Audited {

    @Override
    public String action() {
        return "seen-" + item.kind();
    }

    @Override
    public UUID actor() {
        return reader.personId();
    }

    @Override
    public Set<Role> roles() {
        return reader.grants().stream()
                .filter(grant -> grant.programmeId().equals(programme))
                .map(SignedIn.Grant::role)
                .collect(Collectors.toUnmodifiableSet());
    }

    @Override
    public @Nullable String reason() {
        return purpose;
    }
}
