package org.scrubline.platform.factor;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Authenticator apps and recovery codes by account. */
@Repository
class FactorStore {

    private static final String APP = """
            select sealed_secret, created_at, last_used_at
            from code_app
            where account_id = :account
            """;
    private static final String INSERT_APP = """
            insert into code_app (account_id, sealed_secret, last_step, created_at)
            values (:account, :secret, :step, :at)
            on conflict do nothing
            """;
    private static final String CLAIM_STEP = """
            update code_app
            set last_step = :step,
                last_used_at = :at
            where account_id = :account
              and last_step < :step
            """;
    private static final String INSERT_CODE = """
            insert into recovery_code (account_id, code_hash, created_at)
            values (:account, :hash, :at)
            """;
    private static final String USE_CODE = """
            update recovery_code
            set used_at = :at
            where account_id = :account
              and code_hash = :hash
              and used_at is null
            """;
    private static final String CODES_LEFT = """
            select count(*)
            from recovery_code
            where account_id = :account
              and used_at is null
            """;

    private final JdbcClient jdbc;

    FactorStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** An authenticator app; {@code lastUsedAt} is null until it served a log-in. */
    record App(
            String sealedSecret,
            Instant createdAt,
            @Nullable Instant lastUsedAt) {}

    Optional<App> app(UUID account) {
        return on(APP, account).query((row, n) -> app(row)).optional();
    }

    /** False when the account has one. */
    boolean insertApp(UUID account, String sealedSecret, long step, Instant at) {
        return on(INSERT_APP, account)
                        .param("secret", sealedSecret)
                        .param("step", step)
                        .param("at", utc(at))
                        .update()
                == 1;
    }

    /** Takes a time step for this caller alone; false when it, or a later one, was taken. */
    boolean claimStep(UUID account, long step, Instant at) {
        return on(CLAIM_STEP, account).param("step", step).param("at", utc(at)).update() == 1;
    }

    boolean deleteApp(UUID account) {
        return on("delete from code_app where account_id = :account", account).update() == 1;
    }

    /** Puts new codes in place of all there are. */
    void replaceCodes(UUID account, List<String> hashes, Instant at) {
        deleteCodes(account);
        hashes.forEach(hash -> on(INSERT_CODE, account)
                .param("hash", hash)
                .param("at", utc(at))
                .update());
    }

    void deleteCodes(UUID account) {
        on("delete from recovery_code where account_id = :account", account).update();
    }

    /** Uses a code up; false when it is unknown or was used. */
    boolean useCode(UUID account, String hash, Instant at) {
        return on(USE_CODE, account).param("hash", hash).param("at", utc(at)).update() == 1;
    }

    int codesLeft(UUID account) {
        return on(CODES_LEFT, account).query(Integer.class).single();
    }

    private JdbcClient.StatementSpec on(String sql, UUID account) {
        return jdbc.sql(sql).param("account", account);
    }

    private static App app(ResultSet row) throws SQLException {
        OffsetDateTime used = row.getObject("last_used_at", OffsetDateTime.class);
        return new App(
                row.getString("sealed_secret"),
                row.getObject("created_at", OffsetDateTime.class).toInstant(),
                used == null ? null : used.toInstant());
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
