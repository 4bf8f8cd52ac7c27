package org.scrubline.audit;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scrubline.audit.AuditQueries.Scope;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.RefusedLogins;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

@Service
@Transactional(readOnly = true)
class StoredAuditLog implements AuditLog {

    private static final Duration REFUSALS_SHOWN = Duration.ofDays(30);
    private static final int BATCH = 1000;

    private final AuditQueries queries;
    private final RefusedLogins refusedLogins;
    private final Clock clock;

    StoredAuditLog(AuditQueries queries, RefusedLogins refusedLogins, Clock clock) {
        this.queries = queries;
        this.refusedLogins = refusedLogins;
        this.clock = clock;
    }

    @Override
    public UUID overseen(SignedIn who) {
        return who.grants().stream()
                .filter(grant -> oversees(grant.role()))
                .map(SignedIn.Grant::programmeId)
                .sorted()
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    private static boolean oversees(Role role) {
        return role == Role.DIRECTOR || role == Role.ADMINISTRATOR;
    }

    private static void check(SignedIn who, UUID programmeId) {
        if (!who.has(Role.DIRECTOR, programmeId) && !who.has(Role.ADMINISTRATOR, programmeId)) {
            throw new NotFound();
        }
    }

    @Override
    public AuditSlice done(SignedIn who, UUID programmeId, AuditFilter filter, AuditSlice.Place place) {
        check(who, programmeId);
        return slice(Scope.programme(programmeId), filter, place);
    }

    @Override
    public void allDone(SignedIn who, UUID programmeId, AuditFilter filter, Consumer<AuditEntry> each) {
        check(who, programmeId);
        all(Scope.programme(programmeId), filter, each);
    }

    @Override
    public List<RefusedLogins.Refused> refusedLogins(SignedIn who, UUID programmeId) {
        check(who, programmeId);
        return refusedLogins.of(queries.usernames(programmeId), clock.instant().minus(REFUSALS_SHOWN));
    }

    @Override
    public AuditSlice seen(SignedIn who, AuditSlice.Place place) {
        return slice(Scope.seen(who.personId()), AuditFilter.ALL, place);
    }

    @Override
    public void allOwn(SignedIn who, Consumer<AuditEntry> each) {
        all(Scope.own(who.personId()), AuditFilter.ALL, each);
    }

    private void all(Scope scope, AuditFilter filter, Consumer<AuditEntry> each) {
        AuditSlice.Place place = AuditSlice.Place.NEWEST;
        List<AuditEntry> batch = queries.find(scope, filter, place, BATCH);
        while (!batch.isEmpty()) {
            batch.forEach(each);
            place = AuditSlice.Place.olderThan(batch.get(batch.size() - 1).sequence());
            batch = queries.find(scope, filter, place, BATCH);
        }
    }

    /** Reads one entry more than fits, to know whether there is more in that direction. */
    private AuditSlice slice(Scope scope, AuditFilter filter, AuditSlice.Place place) {
        boolean upwards = place.newerThan() != null;
        List<AuditEntry> found = new ArrayList<>(queries.find(scope, filter, place, PAGE + 1));
        boolean more = found.size() > PAGE;
        List<AuditEntry> entries = new ArrayList<>(more ? found.subList(0, PAGE) : found);
        if (upwards) {
            Collections.reverse(entries);
        }
        boolean newer = upwards ? more : place.olderThan() != null;
        boolean older = upwards || more;
        return new AuditSlice(
                entries,
                newer ? edge(entries, all -> all.get(0)) : null,
                older ? edge(entries, all -> all.get(all.size() - 1)) : null);
    }

    private static @Nullable Long edge(List<AuditEntry> entries, Function<List<AuditEntry>, AuditEntry> end) {
        return entries.isEmpty() ? null : Long.valueOf(end.apply(entries).sequence());
    }
}
