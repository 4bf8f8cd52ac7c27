package org.scrubline.people;

import java.time.Instant;
import java.time.ZoneOffset;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class SetupTokenStore {

    private static final String REPLACE = """
            insert into setup_token (token_hash, created_at)
            values (:hash, :at)
            on conflict (only_one) do update
            set token_hash = :hash,
                created_at = :at
            where setup_token.used_at is null
            """;
    private static final String USE = """
            update setup_token
            set used_at = :at
            where token_hash = :hash
              and used_at is null
            """;

    private final JdbcClient jdbc;

    SetupTokenStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    void replace(String hash, Instant at) {
        jdbc.sql(REPLACE)
                .param("hash", hash)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    /** False when the token is unknown or used. */
    boolean use(String hash, Instant at) {
        return jdbc.sql(USE)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .param("hash", hash)
                        .update()
                == 1;
    }
}
