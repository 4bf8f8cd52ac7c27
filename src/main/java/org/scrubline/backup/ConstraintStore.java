package org.scrubline.backup;

import java.sql.Connection;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/**
 * Lifts, inside one transaction, what stands in the way of loading rows in any order, and puts all of it back: the wall
 * for the owner (row-level security refuses COPY), foreign keys, and triggers of our own. Lifted and put back in one
 * transaction, so nobody ever sees the database without them.
 */
class ConstraintStore {

    private static final String FORCED = """
            select format('alter table %1$s no force row level security', c.oid::regclass) as lift,
                   format('alter table %1$s force row level security', c.oid::regclass) as put_back
            from pg_class c
            where c.relnamespace = 'public'::regnamespace
              and c.relkind = 'r'
              and c.relforcerowsecurity
            order by c.relname
            """;
    private static final String TRIGGERS = """
            select format('alter table %s disable trigger %I', t.tgrelid::regclass, t.tgname) as lift,
                   format('alter table %s enable trigger %I', t.tgrelid::regclass, t.tgname) as put_back
            from pg_trigger t
            join pg_class c on c.oid = t.tgrelid
            where c.relnamespace = 'public'::regnamespace
              and not t.tgisinternal
              and t.tgenabled = 'O'
            order by t.tgname, c.relname
            """;
    private static final String FOREIGN_KEYS = """
            select format('alter table %s drop constraint %I', k.conrelid::regclass, k.conname) as lift,
                   format('alter table %s add constraint %I %s', k.conrelid::regclass, k.conname,
                          pg_get_constraintdef(k.oid)) as put_back
            from pg_constraint k
            where k.connamespace = 'public'::regnamespace
              and k.contype = 'f'
              and k.conparentid = 0
            order by k.conname, k.conrelid::regclass::text
            """;
    private static final String SEQUENCES = """
            select format('select setval(%L, coalesce(max(%I), 1), max(%I) is not null) from %s',
                          d.objid::regclass, a.attname, a.attname, d.refobjid::regclass)
            from pg_depend d
            join pg_class s on s.oid = d.objid and s.relkind = 'S'
            join pg_attribute a on a.attrelid = d.refobjid and a.attnum = d.refobjsubid
            where d.classid = 'pg_class'::regclass
              and d.refclassid = 'pg_class'::regclass
              and d.deptype in ('a', 'i')
              and s.relnamespace = 'public'::regnamespace
            order by s.relname
            """;

    private final JdbcClient jdbc;
    private final Deque<String> putBack = new ArrayDeque<>();

    private record Pair(String lift, String putBack) {}

    ConstraintStore(Connection connection) {
        this.jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
    }

    void lift() {
        List.of(FORCED, TRIGGERS, FOREIGN_KEYS).forEach(this::lift);
    }

    /** Foreign keys are checked against every row as they return. Sequences go on after the largest value loaded. */
    void putBack() {
        jdbc.sql(SEQUENCES)
                .query(String.class)
                .list()
                .forEach(statement -> jdbc.sql(statement).query(Long.class).single());
        while (!putBack.isEmpty()) {
            jdbc.sql(putBack.pop()).update();
        }
    }

    private void lift(String query) {
        List<Pair> pairs = jdbc.sql(query)
                .query((row, number) -> new Pair(row.getString("lift"), row.getString("put_back")))
                .list();
        for (Pair pair : pairs) {
            jdbc.sql(pair.lift()).update();
            putBack.push(pair.putBack());
        }
    }
}
