/** The texts of the debrief, which come with its code. */
import i18next from 'i18next';
import enDebrief from '../../../assets/texts/en-debrief.json';

i18next.addResourceBundle('en', 'translation', enDebrief, true, true);
