import { problems } from '@underlath/contract';
import { defineMessages } from '../define.ts';

export type ProblemKey = keyof typeof problems | 'offline' | 'unknown';

const english = Object.fromEntries(Object.entries(problems).map(([type, { title }]) => [type, title])) as Record<
  keyof typeof problems,
  string
>;

/** What happened, by the type of the problem. The English titles are the server's own. */
export const problemTitles = defineMessages<ProblemKey>(
  { ...english, offline: 'No connection', unknown: 'Something went wrong on this screen' },
  {
    'invalid-input': 'Algo de lo enviado no cuadra',
    'malformed-request': 'No se pudo leer lo enviado',
    'not-signed-in': 'Primero entre a su cuenta',
    'wrong-credentials': 'El correo o la contraseña no es correcto',
    'wrong-code': 'El código no es correcto',
    'sign-in-again': 'Entre otra vez desde el principio',
    'confirm-email-first': 'Primero confirme su correo',
    'not-allowed': 'Su función no permite hacer esto',
    'cross-site': 'Esto llegó desde otro sitio',
    'not-found': 'Eso no está aquí',
    'method-not-allowed': 'Esa dirección no hace eso',
    'not-acceptable': 'No hay respuesta en esa forma',
    'already-exists': 'Ya existe',
    'wrong-state': 'En este estado no se puede hacer',
    'contract-moved': 'El contrato cambió después de que usted lo leyó',
    'still-running': 'El primer envío sigue en curso',
    'other-letter': 'Eso es de otra carta',
    'questions-wait': 'Sus preguntas esperan respuesta',
    'link-gone': 'Este enlace ya no sirve',
    'link-unknown': 'Aquí no se conoce este enlace',
    'link-expired': 'Este enlace venció',
    'link-revoked': 'Este enlace fue desactivado',
    'link-replaced': 'Se envió una versión más nueva',
    'stale-version': 'Otra persona lo cambió',
    'too-large': 'Es demasiado grande',
    'unsupported-media': 'No se acepta este tipo de archivo',
    'version-required': 'Falta decir qué versión se vio',
    'too-many-requests': 'Demasiados envíos seguidos',
    'key-reused': 'La clave de repetición ya se usó para otra cosa',
    'internal-error': 'Algo falló de nuestro lado',
    'database-away': 'La base de datos no responde',
    'store-away': 'El almacén de archivos no responde',
    busy: 'Hay demasiado trabajo en este momento',
    'storage-full': 'El disco está lleno',
    offline: 'Sin conexión',
    unknown: 'Algo falló en esta pantalla',
  },
);
