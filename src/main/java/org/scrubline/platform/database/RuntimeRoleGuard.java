package org.scrubline.platform.database;

import org.springframework.beans.factory.InitializingBean;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Refuses to start as a role that row-level security does not hold: then the wall between organisations is missing. */
@Component
class RuntimeRoleGuard implements InitializingBean {

    private static final String UNHELD = """
            select count(*)
            from pg_roles r
            where r.rolname = current_user
              and (r.rolsuper
                   or r.rolbypassrls
                   or exists (select 1 from pg_class c
                              where c.relowner = r.oid
                                and c.relnamespace = 'public'::regnamespace))
            """;

    private final JdbcClient jdbc;

    RuntimeRoleGuard(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public void afterPropertiesSet() {
        if (jdbc.sql(UNHELD).query(Long.class).single() > 0) {
            throw new DatabaseUnusable("The server's database role is a superuser, bypasses row-level security or owns"
                    + " the tables. Connect as a plain role (see db/roles.sql) and give the owner's log-in to"
                    + " spring.flyway.user.");
        }
    }
}
