package org.scrubline.platform;

import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/** On a page that hands out a file: each person gets so many in an hour and is then asked to wait. */
@Target(ElementType.METHOD)
@Retention(RetentionPolicy.RUNTIME)
public @interface TakesAlong {

    Size value();

    /** What is in the file. */
    enum Size {
        /** About one record or one person. A meeting's papers are printed at one sitting. */
        ONE(60),
        /** Many records at once. */
        MANY(10);

        private final int anHour;

        Size(int anHour) {
            this.anHour = anHour;
        }

        /** How many one person gets in an hour: defaults of this project. */
        public int anHour() {
            return anHour;
        }
    }
}
