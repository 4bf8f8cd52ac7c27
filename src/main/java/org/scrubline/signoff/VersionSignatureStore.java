package org.scrubline.signoff;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

/** Adds and reads countersignatures and acknowledgements; there is no statement here that changes one. */
@Repository
class VersionSignatureStore {

    private static final String COLUMNS = """
            id, signed_sheet_id, event, content, content_hash, record_hash,
            signer_id, signer_name, signer_role, meaning, words, signed_at, signed_zone""";
    private static final String OF_RECORD = """
            select %1$s
            from countersignature
            where tenant_id = :tenant
              and signed_sheet_id = :record
            union all
            select %1$s
            from acknowledgement
            where tenant_id = :tenant
              and signed_sheet_id = :record
            order by signed_at, id
            """.formatted(COLUMNS);
    private static final String INSERT = """
            insert into %s (tenant_id, %s)
            values (
                :tenant, :id, :record, :event, :content, :hash, :recordHash,
                :signer, :name, :role, :meaning, :words, :at, :zone)
            """;
    private static final String INSERT_COUNTERSIGNATURE = INSERT.formatted("countersignature", COLUMNS);
    private static final String INSERT_ACKNOWLEDGEMENT = INSERT.formatted("acknowledgement", COLUMNS);

    private final JdbcClient jdbc;

    VersionSignatureStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Everything signed about a version, oldest first. */
    List<VersionSignature> of(UUID record) {
        return jdbc.sql(OF_RECORD)
                .param("tenant", TenantScope.require())
                .param("record", record)
                .query((row, n) -> signature(row))
                .list();
    }

    void insert(VersionSignature signature) {
        boolean second = signature.event().parties().contains(RecordParty.SECOND_SUPERVISOR);
        jdbc.sql(second ? INSERT_COUNTERSIGNATURE : INSERT_ACKNOWLEDGEMENT)
                .param("tenant", TenantScope.require())
                .param("id", signature.id())
                .param("record", signature.record())
                .param("event", signature.event().name())
                .param("content", signature.content())
                .param("hash", signature.contentHash())
                .param("recordHash", signature.recordHash())
                .param("signer", signature.signerId())
                .param("name", signature.signerName())
                .param("role", signature.signerRole())
                .param("meaning", signature.meaning())
                .param("words", signature.words())
                .param("at", signature.signedAt().atOffset(ZoneOffset.UTC))
                .param("zone", signature.signedZone().getId())
                .update();
    }

    private static VersionSignature signature(ResultSet row) throws SQLException {
        return new VersionSignature(
                row.getObject("id", UUID.class),
                row.getObject("signed_sheet_id", UUID.class),
                RecordEvent.valueOf(row.getString("event")),
                row.getString("content"),
                row.getString("content_hash"),
                row.getString("record_hash"),
                row.getObject("signer_id", UUID.class),
                row.getString("signer_name"),
                row.getString("signer_role"),
                row.getString("meaning"),
                row.getString("words"),
                row.getObject("signed_at", OffsetDateTime.class).toInstant(),
                ZoneId.of(row.getString("signed_zone")));
    }
}
