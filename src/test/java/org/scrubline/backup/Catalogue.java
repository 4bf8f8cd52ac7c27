package org.scrubline.backup;

import java.io.IOException;
import java.sql.SQLException;
import java.util.List;

/** Everything PostgreSQL's catalogue says about our tables, without the numbers it gives its own objects. */
final class Catalogue {

    private static final String EVERYTHING = """
            select line from (
                select format('table %s kind=%s walled=%s forced=%s owner=%s rights=%s', relname, relkind,
                              relrowsecurity, relforcerowsecurity, relowner::regrole, relacl) as line
                from pg_class where relnamespace = 'public'::regnamespace
                union all
                select format('column %s.%s %s place=%s notnull=%s identity=%s generated=%s default=%s rights=%s',
                              a.attrelid::regclass, a.attname, format_type(a.atttypid, a.atttypmod), a.attnum,
                              a.attnotnull, a.attidentity, a.attgenerated, pg_get_expr(d.adbin, d.adrelid), a.attacl)
                from pg_attribute a
                join pg_class c on c.oid = a.attrelid and c.relnamespace = 'public'::regnamespace
                left join pg_attrdef d on d.adrelid = a.attrelid and d.adnum = a.attnum
                where a.attnum > 0
                union all
                select format('constraint %s.%s %s deferrable=%s validated=%s comment=%s', conrelid::regclass, conname,
                              pg_get_constraintdef(oid), condeferrable, convalidated,
                              obj_description(oid, 'pg_constraint'))
                from pg_constraint where connamespace = 'public'::regnamespace
                union all
                select format('index %s valid=%s', pg_get_indexdef(indexrelid), indisvalid)
                from pg_index x join pg_class c on c.oid = x.indrelid and c.relnamespace = 'public'::regnamespace
                union all
                select format('trigger %s.%s %s enabled=%s', tgrelid::regclass,
                              case when tgisinternal then '' else tgname end,
                              case when tgisinternal then tgfoid::regproc::text else pg_get_triggerdef(t.oid) end,
                              tgenabled)
                from pg_trigger t join pg_class c on c.oid = t.tgrelid and c.relnamespace = 'public'::regnamespace
                union all
                select format('policy %s.%s %s using=%s check=%s', polrelid::regclass, polname, polcmd,
                              pg_get_expr(polqual, polrelid), pg_get_expr(polwithcheck, polrelid))
                from pg_policy
                union all
                select format('function %s rights=%s', pg_get_functiondef(oid), proacl)
                from pg_proc where pronamespace = 'public'::regnamespace
                union all
                select format('schema %s', nspacl) from pg_namespace where nspname = 'public'
            ) everything
            order by line
            """;

    private Catalogue() {}

    static List<String> of(SampleInstallation installation) throws SQLException, IOException {
        return installation.column(EVERYTHING);
    }
}
