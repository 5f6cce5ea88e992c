/** On a busy machine a page that is followed by a test takes longer than a second to say something; hanging is caught all the same. */
import { configure } from '@testing-library/react';

configure({ asyncUtilTimeout: 10_000 });
