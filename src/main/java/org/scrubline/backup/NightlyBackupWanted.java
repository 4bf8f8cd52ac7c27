package org.scrubline.backup;

import org.scrubline.platform.database.DatabaseKind;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.core.env.Environment;
import org.springframework.core.type.AnnotatedTypeMetadata;

/** As the settings say; unless they do, with the bundled database only: a hospital's own server has its own backups. */
class NightlyBackupWanted implements Condition {

    @Override
    public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
        Environment settings = context.getEnvironment();
        return settings.getProperty(
                "scrubline.backup.nightly", Boolean.class, DatabaseKind.of(settings) == DatabaseKind.BUNDLED);
    }
}
