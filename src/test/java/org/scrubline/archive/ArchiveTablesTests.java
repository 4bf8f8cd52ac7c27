package org.scrubline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.support.ScrublineTest;

/** No table that names people is forgotten when somebody asks what is kept about them. */
@ScrublineTest
class ArchiveTablesTests {

    private static final String NAMING_PEOPLE = """
            select distinct k.conrelid::regclass::text
            from pg_constraint k
            where k.contype = 'f'
              and k.confrelid in ('person'::regclass, 'login_account'::regclass, 'score_sheet'::regclass,
                  'case_trainee'::regclass)
            """;

    private static final Set<String> PARTS = ArchiveQueries.PARTS.stream()
            .flatMap(part -> part.tables().stream())
            .collect(Collectors.toUnmodifiableSet());

    @Test
    void everyTableThatNamesPeopleIsInAPartOrLeftOutWithItsReason() throws Exception {
        Set<String> named = new TreeSet<>();
        try (Connection connection = TestDatabase.superuser();
                Statement statement = connection.createStatement();
                ResultSet tables = statement.executeQuery(NAMING_PEOPLE)) {
            while (tables.next()) {
                named.add(tables.getString(1));
            }
        }
        Set<String> known = Stream.concat(PARTS.stream(), ArchiveQueries.LEFT_OUT.keySet().stream())
                .collect(Collectors.toSet());

        assertThat(named).hasSizeGreaterThan(40);
        assertThat(named).isSubsetOf(known);
        assertThat(PARTS).doesNotContainAnyElementsOf(ArchiveQueries.LEFT_OUT.keySet());
    }
}
