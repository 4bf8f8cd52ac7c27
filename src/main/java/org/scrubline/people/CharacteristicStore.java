package org.scrubline.people;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;

@Repository
class CharacteristicStore {

    private static final String OWN = """
            select characteristic, answer
            from own_characteristic
            where tenant_id = :tenant
              and person_id = :person
            """;
    private static final String OF_TRAINEES = """
            select said.person_id, said.characteristic, said.answer
            from own_characteristic said
            where said.tenant_id = :tenant
              and exists (select 1
                          from programme_role held
                          where held.tenant_id = said.tenant_id
                            and held.person_id = said.person_id
                            and held.programme_id = :programme
                            and held.role = 'TRAINEE')
            """;
    private static final String FORGET = """
            delete from own_characteristic
            where tenant_id = :tenant
              and person_id = :person
            """;
    private static final String INSERT = """
            insert into own_characteristic (tenant_id, person_id, characteristic, answer, said_at)
            values (:tenant, :person, :characteristic, :answer, :at)
            on conflict (tenant_id, person_id, characteristic) do nothing
            """;

    private final JdbcClient jdbc;

    CharacteristicStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Said(UUID person, Characteristic characteristic, String answer) {}

    Map<Characteristic, String> of(UUID person) {
        record Line(Characteristic characteristic, String answer) {}
        return jdbc
                .sql(OWN)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .query((row, n) ->
                        new Line(Characteristic.valueOf(row.getString("characteristic")), row.getString("answer")))
                .stream()
                .collect(Collectors.toMap(Line::characteristic, Line::answer));
    }

    /** Of everyone who is or was a trainee of the programme. */
    Map<UUID, Map<Characteristic, String>> ofTrainees(UUID programme) {
        return jdbc
                .sql(OF_TRAINEES)
                .param("tenant", TenantScope.require())
                .param("programme", programme)
                .query((row, n) -> new Said(
                        row.getObject("person_id", UUID.class),
                        Characteristic.valueOf(row.getString("characteristic")),
                        row.getString("answer")))
                .stream()
                .collect(Collectors.groupingBy(Said::person, Collectors.toMap(Said::characteristic, Said::answer)));
    }

    void replace(UUID person, Map<Characteristic, String> answers, Instant at) {
        jdbc.sql(FORGET)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .update();
        answers.forEach((characteristic, answer) -> jdbc.sql(INSERT)
                .param("tenant", TenantScope.require())
                .param("person", person)
                .param("characteristic", characteristic.name())
                .param("answer", answer)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update());
    }
}
