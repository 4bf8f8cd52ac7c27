package org.scrubline.casework;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Writes what differs between two versions of a sheet. Every write begins with the guard on the version it was made on. */
@Repository
class SheetWriterStore {

    private static final String ADVANCE = """
            update score_sheet
            set confirmed_part = :part,
                given_supervision = :supervision,
                strength = :strength,
                next_step = :nextStep,
                first_scored_at = :firstScored,
                touched_at = :at,
                removal_told_at = null,
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :sheet
              and state in ('OPEN', 'REOPENED')
              and lock_version = :version
            """;
    private static final String SIGN = """
            update score_sheet
            set state = 'SIGNED',
                lock_version = lock_version + 1
            where tenant_id = :tenant
              and id = :sheet
              and state in ('OPEN', 'REOPENED')
              and lock_version = :version
            """;
    private static final String LOCK = """
            select id
            from score_sheet
            where tenant_id = :tenant
              and id = :sheet
            for update
            """;

    private final JdbcClient jdbc;
    private final SheetAnswerStore answers;

    SheetWriterStore(JdbcClient jdbc, SheetAnswerStore answers) {
        this.jdbc = jdbc;
        this.answers = answers;
    }

    /**
     * Stores the difference.
     *
     * @param stepOfMeasure step code by measure code
     * @return false, with nothing written, when the sheet is no longer open on the version of {@code before}
     */
    boolean write(Sheet before, Sheet after, Map<String, String> stepOfMeasure, Instant at) {
        if (!advance(after, before.lockVersion(), at)) {
            return false;
        }
        answers.write(before, after, stepOfMeasure, at);
        return true;
    }

    boolean markSigned(UUID sheet, int version) {
        return on(SIGN, sheet).param("version", version).update() == 1;
    }

    /** Waits until no other transaction is changing the sheet, and keeps it so until this one ends. */
    void lock(UUID sheet) {
        on(LOCK, sheet).query(UUID.class).optional();
    }

    private boolean advance(Sheet after, int version, Instant at) {
        Instant first = after.firstScoredAt();
        return on(ADVANCE, after.id())
                        .param("part", name(after.confirmedPart()))
                        .param("supervision", name(after.givenSupervision()))
                        .param("strength", after.strength())
                        .param("nextStep", after.nextStep())
                        .param("firstScored", first == null ? null : utc(first))
                        .param("at", utc(at))
                        .param("version", version)
                        .update()
                == 1;
    }

    private JdbcClient.StatementSpec on(String sql, UUID sheet) {
        return jdbc.sql(sql).param("tenant", TenantScope.require()).param("sheet", sheet);
    }

    private static @Nullable String name(@Nullable Enum<?> value) {
        return value == null ? null : value.name();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
