package org.scrubline.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** The marks of a signed sheet {@code s} as a join, for every statement that reads one. */
final class MarkColumns {

    /** As the named parameter {@code knownAt} knew them; null is now. */
    static final String JOIN = """
            left join (
                select c.tenant_id, c.sheet_id,
                    bool_or(e.id is null) as contested,
                    (array_agg(e.kind order by e.signed_at desc) filter (where e.id is not null))[1] as outcome
                from contest c
                left join contest_step e on e.tenant_id = c.tenant_id
                    and e.contest_id = c.id
                    and e.kind in ('CONTEST_UPHELD', 'CONTEST_NOT_UPHELD', 'CONTEST_WITHDRAWN')
                    and e.signed_at <= coalesce(cast(:knownAt as timestamptz), 'infinity')
                where c.tenant_id = :tenant
                  and c.signed_at <= coalesce(cast(:knownAt as timestamptz), 'infinity')
                group by c.tenant_id, c.sheet_id) m on m.tenant_id = s.tenant_id and m.sheet_id = s.sheet_id
            cross join lateral (select %s as countersign_awaited) w
            """.formatted(CountersignQueries.AWAITED);

    private MarkColumns() {}

    static RecordMarks read(ResultSet row) throws SQLException {
        return new RecordMarks(
                row.getBoolean("contested"), outcome(row.getString("outcome")), row.getBoolean("countersign_awaited"));
    }

    private static @Nullable ContestOutcome outcome(@Nullable String kind) {
        return kind == null ? null : ContestOutcome.valueOf(kind.substring("CONTEST_".length()));
    }
}
